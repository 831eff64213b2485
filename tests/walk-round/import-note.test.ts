import { beforeAll, beforeEach, expect, it, vi } from 'vitest'
import type { PhotographImport } from '../../renderer/places/walk-round/import-photographs.ts'

const refusing: PhotographImport = {
  ...{ taskId: 't', panelId: 'bonnet', done: 1, all: 1, ended: true, taken: [], problem: null },
  refused: [{ fileName: 'notes.jpg', problem: { code: 'photograph-refused', message: 'This is no photograph.' } }],
}

let imports: typeof import('../../renderer/places/walk-round/import-photographs.ts')
let screen: typeof import('../../renderer/store/screen-store.ts')
const current = () => imports.useImportStore.getState().current

// The store of the screen asks the page where to start; here is none.
beforeAll(async () => {
  vi.stubGlobal('location', { hash: '' })
  vi.stubGlobal('localStorage', { getItem: () => 'paper', setItem: () => undefined })
  imports = await import('../../renderer/places/walk-round/import-photographs.ts')
  screen = await import('../../renderer/store/screen-store.ts')
  vi.unstubAllGlobals()
})
beforeEach(() => {
  screen.takeInHand('bonnet')
  imports.useImportStore.setState({ current: refusing })
})

it('what an import refused is forgotten once its panel is put down', () => {
  screen.takeInHand('roof')
  expect(current()).toBeNull()
})

it('what ended while another panel was in hand is still said on its own', () => {
  imports.useImportStore.setState({ current: { ...refusing, ended: false } })
  screen.takeInHand('roof')
  imports.useImportStore.setState({ current: refusing })
  screen.takeInHand('bonnet')
  expect(current()).toEqual(refusing)
  screen.takeInHand('roof')
  expect(current()).toBeNull()
})
