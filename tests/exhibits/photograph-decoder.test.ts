import { rmSync } from 'node:fs'
import { afterAll, afterEach, expect, it } from 'vitest'
import { PhotographDecoder } from '../../electron/exhibits/photograph-decoder.ts'
import { cameraFile } from '../fixtures/camera-files.ts'
import { freshFolder, grey, put } from './make-photographs.ts'

const folder = freshFolder()
let decoder = new PhotographDecoder()
afterEach(() => decoder.end())
afterAll(() => rmSync(folder, { recursive: true, force: true }))

it('gives up a picture that takes too long, and decodes the next', async () => {
  decoder = new PhotographDecoder(1)
  const path = await put(folder, 'slow.png', await grey(9, 6000, 6000).png().toBuffer())
  expect(await decoder.look({ path, fileName: 'slow.png' })).toMatchObject({
    refused: expect.stringMatching(/too long/),
  })
  decoder = new PhotographDecoder()
  expect(await decoder.look({ path: cameraFile('orientation-1.jpg'), fileName: 'a.jpg' })).toHaveProperty('report')
})

it('an ended worker is begun anew for the next picture', async () => {
  const work = { path: cameraFile('orientation-1.jpg'), fileName: 'a.jpg' }
  const given = decoder.look(work)
  decoder.end()
  expect(await given).toMatchObject({ refused: expect.stringMatching(/cannot be decoded/) })
  expect(await decoder.look(work)).toHaveProperty('thumbnail')
})
