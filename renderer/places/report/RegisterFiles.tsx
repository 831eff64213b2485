import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { RequestInput } from '../../../shared-types/contract.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { ask, problemOf } from '../../store/ask.ts'

type Register = RequestInput<'register.table'>['register']

const registers: readonly (readonly [Register, string])[] = [
  ['panels', 'panels'],
  ['findings', 'findings'],
  ['spots', 'coating spots'],
  ['parts', 'parts'],
  ['claims', 'claims'],
  ['corrections', 'corrections'],
  ['exhibits', 'exhibits'],
  ['carNumbers', 'numbers on the car'],
]

/** Hands a text to the browser as a file to keep. */
function save(fileName: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
  URL.revokeObjectURL(address)
}

/** Each register as a list for a spreadsheet. */
export function RegisterFiles() {
  const [problem, setProblem] = useState<Problem | null>(null)
  const [said, setSaid] = useState('')
  const write = async (register: Register) => {
    try {
      const { fileName, csv } = await ask('register.table', { register })
      save(fileName, csv)
      setProblem(null)
      setSaid(`${fileName} is with the files this machine keeps for you.`)
    } catch (thrown) {
      setProblem(problemOf(thrown))
    }
  }
  return (
    <Section head="Lists for a spreadsheet" level="column" beside="CSV">
      <p className="register-files">
        {registers.map(([register, words]) => (
          <Button
            key={register}
            className="place-link"
            aria-label={`Keep the list of ${words} as CSV`}
            onPress={() => void write(register)}
          >
            {words}
          </Button>
        ))}
      </p>
      <p className="note" role="status">
        {said}
      </p>
      <ProblemNote problem={problem} />
    </Section>
  )
}
