import { createHash, randomUUID } from 'node:crypto'
import { createReadStream, mkdirSync, rmSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { cameraFile, writeCameraFiles } from '../fixtures/camera-files.ts'
import { beginning } from '../record/sample-record.ts'
import { type Survey, startSurvey } from '../use-cases/survey-program.ts'
import { grey, put, tiffWithWords } from './make-photographs.ts'

let survey: Survey
let folder: string
beforeEach(async () => {
  survey = await startSurvey()
  folder = join(survey.folder, 'card')
  mkdirSync(folder)
})
afterEach(() => survey.end())

const take = (paths: readonly string[], taskId = randomUUID()) =>
  survey.ask('exhibits.import', {
    taskId,
    sources: paths.map((path) => ({ from: 'file', path })),
    panelId: 'front-side.L',
    view: 'left',
    madeBy: 'Ada Quill',
  })
const exhibits = () => survey.program.record().view().exhibits

describe('a photograph taken in', () => {
  it('is kept byte for byte, with what its camera says, as one exhibit by one command', async () => {
    const path = cameraFile('garden-lens-turned.jpg')
    const { taken, refused } = await take([path])
    expect(refused).toEqual([])
    expect(taken).toMatchObject([{ number: 1, command: 'exhibit.photograph' }])
    const photograph = exhibits()[0]?.photograph
    const bytes = await readFile(path)
    expect(photograph?.sha256).toBe(createHash('sha256').update(bytes).digest('hex'))
    expect(photograph).toMatchObject({ orientation: 6, mediaType: 'image/jpeg', byteLength: bytes.length })
    expect(photograph?.takenAt).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/)
    const store = survey.program.record().bytes
    expect((await buffer(store.read(photograph?.sha256 ?? ''))).equals(bytes)).toBe(true)
    expect((await store.rendering(photograph?.sha256 ?? '', 'thumbnail'))?.bytes.length).toBeGreaterThan(500)
    expect(exhibits()[0]).toMatchObject({ panelId: 'front-side.L', view: 'left', madeBy: 'Ada Quill', inReport: true })
  })

  it.each(['png', 'webp'] as const)('may be %s, with EXIF', async (kind) => {
    const picture = await grey(90)
      .withExif({ IFD0: { Make: 'Fenland', Model: 'Plate 2' }, IFD2: { DateTimeOriginal: '2026:05:14 10:42:16' } })
      .toFormat(kind)
      .toBuffer()
    const { refused } = await take([await put(folder, `a.${kind}`, picture)])
    expect(refused).toEqual([])
    expect(exhibits()[0]?.photograph).toMatchObject({
      mediaType: `image/${kind}`,
      camera: 'Fenland Plate 2',
      takenAt: '2026-05-14T10:42:16',
      widthPx: 400,
      heightPx: 300,
    })
  })

  it('may be tiff, with the words of its own directory', async () => {
    const path = await put(folder, 'a.tif', tiffWithWords())
    expect((await take([path])).refused).toEqual([])
    expect(exhibits()[0]?.photograph).toMatchObject({
      mediaType: 'image/tiff',
      camera: 'Fenland Plate 2',
      takenAt: '2026-05-14T10:42:16',
      orientation: 6,
      widthPx: 2,
      heightPx: 4,
    })
  })

  it('keeps the order it was given in, whatever takes longest to decode', async () => {
    const slow = await put(folder, 'slow.png', await grey(1, 6000, 4000).png().toBuffer())
    const quick = await Promise.all(
      [2, 3, 4, 5].map(async (at) => put(folder, `${at}.jpg`, await grey(at).jpeg().toBuffer())),
    )
    await take([slow, ...quick])
    expect(exhibits().map((row) => row.photograph?.fileName)).toEqual(['slow.png', '2.jpg', '3.jpg', '4.jpg', '5.jpg'])
  })

  it('handed in through a door is taken once and thrown away there', async () => {
    const upload = await survey.program.acceptUpload('barn.jpg', createReadStream(cameraFile('hall-no-offset.jpg')))
    const ask = { taskId: randomUUID(), panelId: null, view: null, madeBy: '' }
    const sources = [{ from: 'upload', upload } as const]
    expect((await survey.ask('exhibits.import', { ...ask, sources })).taken).toHaveLength(1)
    expect(exhibits()[0]?.photograph?.fileName).toBe('barn.jpg')
    expect((await survey.ask('exhibits.import', { ...ask, sources })).refused[0]?.problem.code).toBe('not-found')
  })
})

describe('refused by name, while the others go in', () => {
  it('bad, truncated, empty, mislabelled, strange and huge files, folders and what is not there', async () => {
    const good = await readFile(cameraFile('orientation-1.jpg'))
    const bomb = await sharp({ create: { width: 15_000, height: 15_000, channels: 3, background: '#777' } })
      .png({ compressionLevel: 9 })
      .toBuffer()
    mkdirSync(join(folder, 'folder.jpg'))
    const wall = await readFile(cameraFile('wall-no-exif.jpg'))
    const bad = [
      await put(folder, 'empty.jpg', new Uint8Array()),
      await put(folder, 'text.jpg', Buffer.from('no picture at all, only words')),
      await put(folder, 'truncated.jpg', wall.subarray(0, wall.length / 2)),
      await put(folder, 'damaged.jpg', Buffer.concat([good.subarray(0, 30), Buffer.alloc(4000, 0x55)])),
      await put(folder, 'named-wrongly.png', good),
      await put(folder, 'drawing.jpg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')),
      await put(folder, 'huge.png', bomb),
      await put(folder, 'telephone.heic', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic')),
      join(folder, 'folder.jpg'),
      join(folder, 'not-there.jpg'),
    ]
    const { taken, refused } = await take([...bad, cameraFile('orientation-2.jpg')])
    expect(refused.map((row) => row.fileName)).toEqual(bad.map((path) => basename(path)))
    for (const { fileName, problem } of refused) {
      expect(problem.code).toBe('photograph-refused')
      expect(problem.message).toContain(`"${fileName}" was not taken in. `)
    }
    const why = Object.fromEntries(refused.map((row) => [row.fileName, row.problem.message]))
    expect(why['truncated.jpg']).toMatch(/breaks off/)
    expect(why['named-wrongly.png']).toMatch(/it is a JPEG/)
    expect(why['telephone.heic']).toMatch(/Export it as JPEG/)
    expect(why['huge.png']).toMatch(/million pixels/)
    expect(taken).toHaveLength(1)
  })

  it('a photograph that is in the record already, which is said with its number', async () => {
    await take([cameraFile('orientation-1.jpg')])
    const again = await put(folder, 'again.jpg', await readFile(cameraFile('orientation-1.jpg')))
    const { refused } = await take([again, cameraFile('orientation-2.jpg'), again])
    expect(refused.map((row) => row.problem.message)).toEqual(
      Array(2).fill('"again.jpg" was not taken in. This photograph is already E 1.'),
    )
    expect(exhibits()).toHaveLength(2)
  })
})

it('tells how far it is, and that it ended', async () => {
  const taskId = randomUUID()
  await take(await writeCameraFiles(folder, 3), taskId)
  const told = survey.events.filter((event) => 'taskId' in event && event.taskId === taskId)
  expect(told.map((event) => (event.event === 'task.progress' ? event.done : event.event))).toEqual([
    1,
    2,
    3,
    'task.ended',
  ])
})

it('stopped half way keeps what went in and names what did not', async () => {
  const paths = await writeCameraFiles(folder, 30)
  const taskId = randomUUID()
  const importing = take(paths, taskId)
  while (exhibits().length < 2) await new Promise((resolve) => setTimeout(resolve, 5))
  await survey.ask('task.cancel', { taskId })
  const { taken, refused } = await importing
  expect(taken.length).toBeGreaterThanOrEqual(2)
  expect(taken.length).toBeLessThan(30)
  expect(refused).toHaveLength(30 - taken.length)
  expect(new Set(refused.map((row) => row.problem.code))).toEqual(new Set(['cancelled']))
  expect(exhibits()).toHaveLength(taken.length)
  expect((await take(paths.slice(-2))).taken).toHaveLength(2)
})

it('goes on into no other record when one is opened meanwhile', async () => {
  const paths = await writeCameraFiles(folder, 30)
  const importing = take(paths)
  while (exhibits().length < 1) await new Promise((resolve) => setTimeout(resolve, 5))
  const { particulars, commission, visit } = beginning
  await survey.ask('records.create', { fileName: 'another', particulars, commission, visit })
  const { taken, refused } = await importing
  expect(taken.length + refused.length).toBe(30)
  expect(refused.length).toBeGreaterThan(0)
  expect(exhibits()).toEqual([])
})

it('is refused before anything is read when the record may only be read or the panel is not there', async () => {
  const path = cameraFile('orientation-1.jpg')
  const told = { taskId: randomUUID(), sources: [{ from: 'file', path } as const], view: null, madeBy: '' }
  expect((await survey.refusal('exhibits.import', { ...told, panelId: 'bed-floor' })).code).toBe('not-found')
  const record = survey.program.record().path
  await survey.ask('records.open', { path: record, readOnly: true })
  expect((await survey.refusal('exhibits.import', { ...told, panelId: null })).code).toBe('record-read-only')
  rmSync(folder, { recursive: true })
})
