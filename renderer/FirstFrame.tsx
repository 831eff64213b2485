import { Rail } from './Rail.tsx'

const notYet = () => undefined

/**
 * The frame of the program as the page holds it before the program is there; the build draws it into `index.html`, and the
 * start of the page marks its place and sheet. It hears nothing yet, so it is inert and untold to screen readers; which
 * record is open it cannot know, and leaves empty.
 */
export function FirstFrame() {
  return (
    <div className="program" inert aria-hidden="true">
      <Rail place="records" sheetName="paper" onPlace={notYet} onSheet={notYet} onKeys={notYet} />
      <div className="place">
        <header className="head-line" />
        <main className="working-area" />
      </div>
    </div>
  )
}
