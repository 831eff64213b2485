import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CarRecord } from '../../electron/record/car-record.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { rebuildRecord } from '../../electron/record/rebuild.ts'
import type { Edition } from '../../shared-types/edition.ts'
import type { RecordView } from '../../shared-types/record.ts'
import {
  AT,
  addFinding,
  amendFinding,
  beginning,
  command,
  scratchFolder,
  sender,
  withdrawFinding,
} from './sample-record.ts'
import { dumpTables } from './table-dump.ts'

let scratch: ReturnType<typeof scratchFolder>
beforeEach(() => {
  scratch = scratchFolder()
})
afterEach(() => scratch.remove())

/** The rows of a view, without where the journal stands. */
function rowsOf({ journalNumber: _, journalHash: __, undoState: ___, path: ____, ...rows }: RecordView): string {
  return JSON.stringify(rows)
}

const step = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ act: fc.constant('add' as const), note: fc.string({ maxLength: 12, unit: 'grapheme' }) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      act: fc.constantFrom('amend' as const, 'withdraw' as const),
      pick: fc.nat(),
      note: fc.string({ maxLength: 8 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ act: fc.constant('title' as const), note: fc.string({ minLength: 1, maxLength: 8 }) }),
  },
  { weight: 4, arbitrary: fc.constantFrom({ act: 'undo' as const }, { act: 'redo' as const }) },
)
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never

const setTitle = (record: CarRecord, title: string) =>
  record.commit(
    command('particulars.set', { title }, ({ now }) => ({
      changes: [{ register: 'particulars', key: 'the', after: { ...now.particulars, title } }],
    })),
  )

/** Does a step if it applies; answers the number given, or null. */
async function take(record: CarRecord, chosen: Step): Promise<number | null> {
  if (chosen.act === 'add') return (await record.commit(addFinding(chosen.note))).number
  if (chosen.act === 'title') return (await setTitle(record, chosen.note)).number
  if (chosen.act === 'undo') return (await record.undo(sender())).number
  if (chosen.act === 'redo') return (await record.redo(sender())).number
  const { findings } = record.view()
  const found = findings[chosen.pick % Math.max(findings.length, 1)]
  if (!found) return null
  await record.commit(chosen.act === 'amend' ? amendFinding(found.number, chosen.note) : withdrawFinding(found.number))
  return null
}

/** Undo and redo as two plain lists of states: what the record must agree with. */
class Model {
  #undo: string[] = []
  #redo: string[] = []
  constructor(public state: string) {}
  did(after: string): void {
    this.#undo.push(this.state)
    this.#redo = []
    this.state = after
  }
  can(act: 'undo' | 'redo'): boolean {
    return (act === 'undo' ? this.#undo : this.#redo).length > 0
  }
  turn(act: 'undo' | 'redo'): void {
    const [from, to] = act === 'undo' ? [this.#undo, this.#redo] : [this.#redo, this.#undo]
    to.push(this.state)
    this.state = from.pop() ?? this.state
  }
}

describe('undo and redo', () => {
  it('agree with two plain stacks of states over any sequence; undo all is the start, redo all is the end, no number comes twice', async () => {
    let run = 0
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 20 }), fc.boolean(), async (steps, reopen) => {
        run += 1
        const path = scratch.file(`run-${run}.wmk`)
        let record = await createRecord(path, beginning)
        const start = rowsOf(record.view())
        const model = new Model(start)
        const numbers: number[] = []
        for (const chosen of steps) {
          const before = record.view().journalNumber
          if ((chosen.act === 'undo' || chosen.act === 'redo') && !model.can(chosen.act)) {
            await expect(take(record, chosen)).rejects.toMatchObject({ problem: { code: 'nothing-to-undo' } })
          } else {
            const number = await take(record, chosen)
            if (number !== null) numbers.push(number)
            if (chosen.act === 'undo' || chosen.act === 'redo') model.turn(chosen.act)
            else if (record.view().journalNumber > before) model.did(rowsOf(record.view()))
          }
          expect(rowsOf(record.view())).toBe(model.state)
          expect([record.view().undoState.undo !== null, record.view().undoState.redo !== null]).toEqual([
            model.can('undo'),
            model.can('redo'),
          ])
        }
        expect(new Set(numbers).size).toBe(numbers.length)
        if (reopen) {
          await record.close()
          record = await openRecord(path, { readOnly: false })
        }
        while (record.view().undoState.redo !== null) await record.redo(sender())
        const end = rowsOf(record.view())
        while (record.view().undoState.undo !== null) await record.undo(sender())
        expect(rowsOf(record.view())).toBe(start)
        while (record.view().undoState.redo !== null) await record.redo(sender())
        expect(rowsOf(record.view())).toBe(end)
        expect((await record.verify()).sound).toBe(true)
        await record.close()
        await rebuildRecord(path, `${path}.rebuilt`)
        expect(await dumpTables(`${path}.rebuilt`)).toEqual(await dumpTables(path))
      }),
      { numRuns: 25 },
    )
  }, 240_000)

  it('name what they would act on by what was done, however often it was turned over', async () => {
    const record = await createRecord(scratch.file('sedge.wmk'), beginning)
    await record.commit(addFinding('one'))
    for (let turn = 0; turn < 5; turn += 1) {
      expect((await record.undo(sender())).undoState).toEqual({ undo: null, redo: 'Finding F 1 added' })
      expect((await record.redo(sender())).undoState).toEqual({ undo: 'Finding F 1 added', redo: null })
    }
    await record.close()
  })

  const edition: Edition = {
    number: 1,
    reportNumber: 'T-1/1',
    issuedAt: AT,
    paper: 'A4',
    reason: '',
    sha256: '0'.repeat(64),
    byteLength: 1,
    pages: 1,
    journalNumber: 2,
    journalHash: '0'.repeat(64),
  }

  it('step over what is final: an issued edition stays, and the command before it is taken back', async () => {
    const record = await createRecord(scratch.file('sedge.wmk'), beginning)
    await record.commit(addFinding('one'))
    const issue = command('edition.issue', {}, () => ({
      changes: [{ register: 'editions', key: '1', after: edition }],
      undoable: false,
    }))
    expect((await record.commit(issue)).undoState).toEqual({ undo: 'Finding F 1 added', redo: null })
    await record.undo(sender())
    expect(record.view().findings).toEqual([])
    expect(record.view().editions).toEqual([edition])
    await record.redo(sender())
    expect(record.view().findings).toHaveLength(1)
    await record.close()
  })

  it('refuse to take back a row that something final has changed since', async () => {
    const record = await createRecord(scratch.file('sedge.wmk'), beginning)
    await record.commit(addFinding('one'))
    await record.commit(
      command('final', {}, () => ({
        changes: amendFinding(1, 'final').decide({ now: record.view(), take: () => 0 }).changes,
        undoable: false,
      })),
    )
    await expect(record.undo(sender())).rejects.toMatchObject({
      problem: { code: 'nothing-to-undo', message: expect.stringContaining('Finding F 1 added') },
    })
    expect(record.view().findings[0]?.note).toBe('final')
    await record.close()
  })
})
