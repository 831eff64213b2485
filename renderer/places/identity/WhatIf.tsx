import type { ReactNode } from 'react'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { usePartNames } from '../../store/part-names.ts'
import type { WhatIf } from './use-what-if.ts'

/** Whether answers are tried and not kept, and how many were. */
export function WhatIfBox({ whatIf }: { readonly whatIf: WhatIf }) {
  const { trying, turn, tried } = whatIf
  return (
    <label className="what-if">
      <input type="checkbox" checked={trying} onChange={(event) => turn(event.target.checked)} />
      What if: answers are tried and not kept{tried.length === 0 ? '' : `; ${tried.length} tried`}
    </label>
  )
}

interface SetAsideListProps {
  readonly whatIf: WhatIf
  readonly nameOfTell: (tell: string) => string
}

/** What is set aside for a try, each to be put back. */
export function SetAsideList({ whatIf, nameOfTell }: SetAsideListProps) {
  const { setAside, putBack } = whatIf
  const nameOfPart = usePartNames()
  if (Object.values(setAside).every(({ length }) => length === 0)) return null
  return (
    <ul className="set-aside" aria-label="Set aside">
      {setAside.tells.map((tell) => (
        <Aside key={tell} onPutBack={() => putBack({ tells: [tell] })}>
          {nameOfTell(tell)}
        </Aside>
      ))}
      {setAside.numbers.map((number) => (
        <Aside key={number} onPutBack={() => putBack({ numbers: [number] })}>
          number <ReferenceLink reference={{ kind: 'carNumber', key: String(number) }} />
        </Aside>
      ))}
      {setAside.parts.map((part) => (
        <Aside key={part} onPutBack={() => putBack({ parts: [part] })}>
          number on <ReferenceLink reference={{ kind: 'part', key: part }} words={nameOfPart(part)} />
        </Aside>
      ))}
    </ul>
  )
}

function Aside({ children, onPutBack }: { readonly children: ReactNode; readonly onPutBack: () => void }) {
  return (
    <li>
      <span>set aside: {children}</span>
      <button type="button" className="action-key" onClick={onPutBack}>
        put back
      </button>
    </li>
  )
}
