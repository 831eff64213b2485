import type { RefObject } from 'react'

interface PhotographChooserProps {
  /** Where the chooser stands, so that a key or a button can open it. */
  readonly chooser: RefObject<HTMLInputElement | null>
  readonly onFiles: (files: readonly File[]) => void
}

/** The machine's own chooser of photographs: out of sight, opened by a key or a button, and ready for the same file again. */
export function PhotographChooser({ chooser, onFiles }: PhotographChooserProps) {
  return (
    <input
      ref={chooser}
      type="file"
      className="unseen"
      aria-label="Photographs kept on this machine"
      accept="image/jpeg,image/png,image/webp,image/tiff,image/heic,.heic,.heif"
      multiple
      tabIndex={-1}
      onChange={(event) => {
        const files = [...(event.target.files ?? [])]
        event.target.value = ''
        onFiles(files)
      }}
    />
  )
}
