import { useId } from 'react'

/** The part of a bar that was seen and is not original: hatched, at the same pitch at any width. */
export function SeenNo({ percent }: { readonly percent: number | null }) {
  const hatch = useId()
  return (
    <span
      className={percent === null ? 'bar-patch bar-no' : 'bar-no'}
      {...(percent === null ? {} : { style: { width: `${percent}%` } })}
    >
      <svg className="bar-hatch" aria-hidden="true">
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M2.5 0 V5" />
        </pattern>
        <rect width="100%" height="100%" fill={`url(#${hatch})`} />
      </svg>
    </span>
  )
}
