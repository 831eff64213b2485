import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import type { WhatIf } from './use-what-if.ts'

interface WhatIfLineProps {
  readonly whatIf: WhatIf
  readonly nameOfTell: (tell: string) => string
}

/** Whether answers are tried and not kept, how many were, and what is set aside, each to be put back. */
export function WhatIfLine({ whatIf, nameOfTell }: WhatIfLineProps) {
  const { trying, turn, tried, setAside, putBack } = whatIf
  return (
    <>
      <label className="what-if">
        <input type="checkbox" checked={trying} onChange={(event) => turn(event.target.checked)} />
        What if: answers are tried and not kept{tried.length === 0 ? '' : `; ${tried.length} tried`}
      </label>
      {setAside.tells.length + setAside.numbers.length === 0 ? null : (
        <ul className="set-aside" aria-label="Set aside">
          {setAside.tells.map((tell) => (
            <li key={tell}>
              <span>set aside: {nameOfTell(tell)}</span>
              <button type="button" className="action-key" onClick={() => putBack({ tell })}>
                put back
              </button>
            </li>
          ))}
          {setAside.numbers.map((number) => (
            <li key={number}>
              <span>
                set aside: number <ReferenceLink reference={{ kind: 'carNumber', key: String(number) }} />
              </span>
              <button type="button" className="action-key" onClick={() => putBack({ number })}>
                put back
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}
