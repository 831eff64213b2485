import { useEffect, useState } from 'react'

/**
 * Within this of a picture that changed by itself a press was still meant for the picture before. A doubled press follows
 * the first within 0.2 to 0.3 s; somebody who has read the new question is never so quick.
 */
export const JUST_COME_MS = 400

/** True while what stands here has come a moment ago without being asked for: what is pressed then was meant for what went. */
export function useJustCome(byItself: boolean): boolean {
  const [justCome, setJustCome] = useState(byItself)
  useEffect(() => {
    if (!justCome) return
    const rested = setTimeout(() => setJustCome(false), JUST_COME_MS)
    return () => clearTimeout(rested)
  }, [justCome])
  return justCome
}
