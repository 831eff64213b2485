import { afterEach, describe, expect, it, vi } from 'vitest'
import { answer } from '../../electron/doors/answer.ts'
import { inputBounds } from '../../electron/doors/checked-input.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { echoes, echoesBut, noProgram } from './stand-in.ts'

const commandId = '3f2504e0-4f89-41d3-9a0c-0305e82c3301'
const note = (input: unknown) => answer(noProgram, echoes, 'panel.note', input)
const sound = { commandId, panelId: 'hood', note: 'filler under the trim' }

afterEach(() => vi.restoreAllMocks())

describe('a request at the door', () => {
  it('that fits its schema reaches its use case and is answered with a value', async () => {
    expect(await note(sound)).toEqual({ value: { name: 'panel.note', input: sound } })
  })

  it('that answers nothing is answered null', async () => {
    const silent = echoesBut('records.close', async () => undefined)
    expect(await answer(noProgram, silent, 'records.close', {})).toEqual({ value: null })
  })

  it.each(['', 'panel', 'panel.paint', 'toString', '__proto__', 'constructor', 'hasOwnProperty', 'x'.repeat(10_000)])(
    'of an unknown name is a problem: %.30s',
    async (name) => {
      const answered = await answer(noProgram, echoes, name, {})
      expect(answered).toMatchObject({ problem: { code: 'not-found' } })
      expect(JSON.stringify(answered).length).toBeLessThan(300)
    },
  )

  it.each([
    ['missing', { commandId, panelId: 'hood' }, 'note'],
    ['wrong-typed', { ...sound, note: 7 }, 'note'],
    ['extra', { ...sound, colour: 'red' }, 'colour'],
    ['oversized', { ...sound, note: 'x'.repeat(100_001) }, 'note'],
    ['ill-formed', { ...sound, commandId: 'one' }, 'commandId'],
  ])('with a %s field is refused, naming the field', async (_how, input, field) => {
    const answered = await note(input)
    expect(answered).toMatchObject({ problem: { code: 'input-refused', field } })
    expect(JSON.stringify(answered)).toMatch(/try again|send/)
  })

  it('names a field deep inside by its path', async () => {
    const sources = [{ from: 'file', path: '/a.jpg' }, { from: 'file' }]
    const input = { taskId: commandId, sources, panelId: null, view: null, madeBy: '' }
    expect(await answer(noProgram, echoes, 'exhibits.import', input)).toMatchObject({
      problem: { code: 'input-refused', field: 'sources.1.path' },
    })
  })

  it.each([undefined, null, 7, 'text', [], true, Symbol('a'), () => 1, new Map(), new Date(0)])(
    'that is no object at all is refused: %s',
    async (input) => {
      expect(await note(input)).toMatchObject({ problem: { code: 'input-refused' } })
    },
  )

  it.each([
    [
      '__proto__',
      '{"commandId":"3f2504e0-4f89-41d3-9a0c-0305e82c3301","panelId":"hood","note":"","__proto__":{"a":1}}',
    ],
    ['constructor', '{"constructor":{"prototype":{"a":1}}}'],
    ['draft.__proto__', '{"draft":{"__proto__":{"a":1}}}'],
    ['draft.list.0.prototype', '{"draft":{"list":[{"prototype":{"a":1}}]}}'],
  ])('that reaches for a prototype by %s is refused and changes none', async (field, text) => {
    expect(await note(JSON.parse(text))).toMatchObject({ problem: { code: 'input-refused', field } })
    expect(({} as { a?: number }).a).toBeUndefined()
  })

  it('deeper or larger than a request can be is refused before any schema reads it', async () => {
    let deep: unknown = 'end'
    for (let level = 0; level < 5_000; level += 1) deep = { a: deep }
    const wide = Array.from({ length: inputBounds.values + 1 }, () => 0)
    for (const note_ of [deep, wide, 'x'.repeat(inputBounds.characters + 1)]) {
      expect(await note({ ...sound, note: note_ })).toMatchObject({ problem: { code: 'input-refused' } })
    }
  })

  it('with a circle in it is refused', async () => {
    const circle: { self?: unknown } = {}
    circle.self = circle
    expect(await note(circle)).toMatchObject({ problem: { code: 'input-refused' } })
  })
})

describe('what a use case throws', () => {
  it('crosses as it is when it is a problem', async () => {
    const refusing = echoesBut('record.view', async () => {
      throw new ProblemError('rule-of-the-trade', 'See the back first.', {
        field: 'metal',
        instead: ['filler over metal'],
      })
    })
    expect(await answer(noProgram, refusing, 'record.view', {})).toEqual({
      problem: {
        code: 'rule-of-the-trade',
        message: 'See the back first.',
        field: 'metal',
        instead: ['filler over metal'],
      },
    })
  })

  it.each([new Error('secret at /home/somebody'), 'a thrown text', undefined, { code: 'odd' }])(
    'becomes `internal` with what to do, its details on the error stream only: %s',
    async (thrown) => {
      const errors = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
      const failing = echoesBut('record.view', async () => {
        throw thrown
      })
      const answered = await answer(noProgram, failing, 'record.view', {})
      expect(answered).toMatchObject({ problem: { code: 'internal', message: expect.stringContaining('Try again') } })
      expect(JSON.stringify(answered)).not.toContain('secret')
      const reference = /under (\w{8})\./.exec(JSON.stringify(answered))?.[1]
      expect(errors).toHaveBeenCalledWith(expect.stringContaining(`[${reference}] record.view`))
    },
  )
})
