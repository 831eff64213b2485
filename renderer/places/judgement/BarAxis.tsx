import { SeenNo } from './SeenNo.tsx'

/** The one axis of all bars, 0 to 100 %, and what the marks mean. */
export function BarAxis() {
  return (
    <>
      <p className="bar-key" aria-hidden="true">
        <span className="bar-patch bar-yes" /> seen, original
        <span className="bar-patch bar-open" /> not seen or not settled
        <SeenNo percent={null} /> seen, not original
      </p>
      <div className="share-row bar-axis" aria-hidden="true">
        <span />
        <span className="bar-figures">
          {[0, 25, 50, 75, 100].map((figure) => (
            <span key={figure} style={{ left: `${figure}%` }}>
              {figure}
              {figure === 100 ? '\u202f%' : ''}
            </span>
          ))}
        </span>
        <span />
      </div>
    </>
  )
}
