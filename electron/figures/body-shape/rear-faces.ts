import type { FaceWork } from './face.ts'

/** Behind the cabin of a car with a boot: side windows, last post, rear screen, deck, lid, wings, tail. */
export function deckFaces(work: FaceWork): void {
  const { add } = work
  windowFaces(work)
  rearWing(work, 'rear-side.L')
  const last = work.windows.at(-1) ?? 'post front'
  add(
    'rear-post.L',
    'sab',
    ['crest', `${last} foot`, 'rear post top of wing'],
    ['rear post foot', 'rear post top of wing', 'rear corner'],
    ['rear edge', 'rear corner', 'gutter rear'],
    ['rail rear', 'gutter rear', 'frame rear'],
    [last, 'frame rear', `${last} foot`],
  )
  add(
    'rear-glass-surround',
    'sab',
    ['rear screen foot', 'rear screen foot centre', 'rear corner'],
    ['rear edge', 'rear corner', 'gutter rear'],
    ['roof rear edge', 'gutter rear', 'roof rear'],
    ['rear centre', 'roof rear', 'rear screen foot centre'],
  )
  add(
    'rear-deck-panel',
    'sab',
    ['rear screen foot', 'rear corner', 'rear screen foot centre'],
    ['top centre rear', 'rear screen foot centre', 'lid front centre'],
    ['lid front', 'lid front centre', 'lid front corner'],
    ['deck side', 'lid front corner', 'rear corner'],
  )
  add(
    'rear-lid',
    'sab',
    ['lid front', 'lid front corner', 'lid front centre'],
    ['top centre rear', 'lid front centre', 'tail crest'],
    ['crest', 'tail crest', 'tail lid'],
    ['lid side', 'tail lid', 'lid front corner'],
  )
  add(
    'rear-side.L',
    'sab',
    ['crest', 'rear post top of wing', 'tail lid'],
    ['lid side', 'tail lid', 'lid front corner'],
    ['deck side', 'lid front corner', 'rear corner'],
    ['rear post foot', 'rear corner', 'rear post top of wing'],
  )
  tailFaces(work, 'rear-lid')
}

/** Behind the cabin of an estate or van: side windows or load side, last post, tail door or load doors. */
export function uprightFaces(work: FaceWork): void {
  const { add, form } = work
  const van = form.body === 'van'
  windowFaces(work)
  rearWing(work, van ? 'cargo-side.L' : 'rear-side.L')
  const last = work.windows.at(-1) ?? 'post front'
  add(
    'last-post.L',
    'sab',
    ['crest', `${last} foot`, 'tail lid'],
    ['rear edge', 'tail lid', 'gutter rear'],
    ['rail rear', 'gutter rear', 'frame rear'],
    [last, 'frame rear', `${last} foot`],
  )
  add(
    'rear-roof-rail',
    'sab',
    ['roof rear edge', 'roof rear', 'gutter rear'],
    ['rear edge', 'gutter rear', 'rear rail corner'],
    ['rear rail', 'rear rail corner', 'rear rail centre'],
    ['rear centre', 'rear rail centre', 'roof rear'],
  )
  const door = van ? 'rear-cargo-door.L' : 'tail-door'
  add(
    door,
    'sab',
    ['rear rail', 'rear rail centre', 'rear rail corner'],
    ['rear edge', 'rear rail corner', 'tail lid'],
    ['crest', 'tail lid', 'tail crest'],
    ['rear centre', 'tail crest', 'rear rail centre'],
  )
  tailFaces(work, van ? door : 'tail door below')
}

/** Faces between the upright lines of the side windows. */
function windowFaces({ add, windows, form }: FaceWork): void {
  const before: Readonly<Record<string, string>> = {
    'post rear': 'mid-post-upper.L',
    'rear door frame': 'rear-door.L',
    'rear post rear': 'rear-post.L',
    'side glass rear': form.body === 'van' ? 'cargo-side.L' : 'side-glass-surround.L',
  }
  windows.slice(1).forEach((line, index) => {
    const ahead = windows[index]
    if (!ahead) return
    const last = index === windows.length - 2
    const part = before[line] ?? ''
    add(
      part,
      'sa',
      ['crest', `${ahead} foot`, `${line} foot`],
      [line, `${line} foot`, last ? 'frame rear' : `${line} head`],
      ['frame top', last ? 'frame rear' : `${line} head`, `${ahead} head`],
      [ahead, `${ahead} head`, `${ahead} foot`],
    )
  })
}

/** Flank round the rear wheel, and the lamp housing behind it. */
export function rearWing({ add, flank, form }: FaceWork, part: string): void {
  const ahead = flank.at(-1) ?? 'door rear'
  const bed = form.description.tail === 'bed'
  const behind = `${part} behind the wheel`
  add(
    part,
    'sa',
    ['crest', `${ahead} top`, 'rear arch crest'],
    ['rear arch section', 'rear arch crest', 'rear arch top'],
    ['rear arch', 'rear arch top', 'rear arch ahead fullest'],
    ['fullest', 'rear arch ahead fullest', `${ahead} fullest`],
    [`${ahead} upper`, `${ahead} fullest`, `${ahead} top`],
  )
  if (bed) {
    add(
      part,
      's',
      ['fullest', `${ahead} fullest`, 'rear arch ahead fullest'],
      ['rear arch', 'rear arch ahead fullest', 'rear arch ahead foot'],
      ['foot', 'rear arch ahead foot', 'cab rear foot'],
      ['cab rear sill', 'cab rear foot', 'cab rear sill'],
      [`${ahead} lower`, `${ahead} sill`, `${ahead} fullest`],
    )
  } else {
    add(
      part,
      's',
      ['fullest', `${ahead} fullest`, 'rear arch ahead fullest'],
      ['rear arch', 'rear arch ahead fullest', 'rear arch sill'],
      ['sill top', 'rear arch sill', `${ahead} sill`],
      [`${ahead} lower`, `${ahead} sill`, `${ahead} fullest`],
    )
  }
  add(
    behind,
    'sab',
    ['crest', 'rear arch crest', 'tail lamp outer'],
    ['tail lamp outside', 'tail lamp outer', 'tail lamp foot'],
    ['tail seam upper', 'tail lamp foot', 'tail seam fullest'],
    ['fullest', 'tail seam fullest', 'rear arch behind fullest'],
    ['rear arch', 'rear arch behind fullest', 'rear arch top'],
    ['rear arch section', 'rear arch top', 'rear arch crest'],
  )
  add(
    behind,
    'sb',
    ['fullest', 'rear arch behind fullest', 'tail seam fullest'],
    ['tail seam lower', 'tail seam fullest', 'tail seam foot'],
    ['foot', 'tail seam foot', 'rear arch behind foot'],
    ['rear arch', 'rear arch behind foot', 'rear arch behind fullest'],
  )
  add(
    'rear-lamp-housing.L',
    'sab',
    ['crest', 'tail lamp outer', 'tail lamp inner'],
    ['tail lamp inside', 'tail lamp inner', 'tail lamp foot'],
    ['tail lamp outside', 'tail lamp foot', 'tail lamp outer'],
  )
}

/** Tail below the crest: what opens, the panel round it, the apron. */
function tailFaces(work: FaceWork, opening: string): void {
  const { add } = work
  add(
    opening,
    'sab',
    ['crest', 'tail crest', 'tail lid'],
    ['tail lid side', 'tail lid', 'tail lid foot'],
    ['tail lid edge', 'tail lid foot', 'tail lid centre'],
    ['tail centre', 'tail lid centre', 'tail crest'],
  )
  add(
    'tail-panel',
    'sab',
    ['crest', 'tail lid', 'tail lamp inner'],
    ['tail lamp inside', 'tail lamp inner', 'tail lamp foot'],
    ['tail seam upper', 'tail lamp foot', 'tail seam fullest'],
    ['fullest', 'tail seam fullest', 'tail fullest'],
    ['tail centre', 'tail fullest', 'tail lid centre'],
    ['tail lid edge', 'tail lid centre', 'tail lid foot'],
    ['tail lid side', 'tail lid foot', 'tail lid'],
  )
  lowerTail(work, 'rear-apron')
}

export function lowerTail({ add }: FaceWork, part: string): void {
  add(
    part,
    'sb',
    ['fullest', 'tail fullest', 'tail seam fullest'],
    ['tail seam lower', 'tail seam fullest', 'tail seam foot'],
    ['foot', 'tail seam foot', 'tail foot'],
    ['tail centre', 'tail foot', 'tail fullest'],
  )
}
