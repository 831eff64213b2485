import type { RefObject } from 'react'
import { FileChooser } from '../../parts-of-page/FileChoice.tsx'

interface PhotographChooserProps {
  /** Where the chooser stands, so that a key or a button can open it. */
  readonly chooser: RefObject<HTMLInputElement | null>
  readonly onFiles: (files: readonly File[]) => void
}

/** The machine's own chooser of photographs, several at a time. */
export function PhotographChooser({ chooser, onFiles }: PhotographChooserProps) {
  return (
    <FileChooser
      chooser={chooser}
      name="Photographs kept on this machine"
      accept="image/jpeg,image/png,image/webp,image/tiff,image/heic,.heic,.heif"
      multiple
      onFiles={onFiles}
    />
  )
}
