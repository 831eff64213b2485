import { builtinModules } from 'node:module'
import { type Fault, placeOf, type SourceFile, type SourceTree } from './source-tree.ts'

/** Libraries the pure computations may use beside the contract. */
const numericLibraries = /^(d3-[\w-]+|date-fns|delaunator)(\/|$)/
const isOfNode = (asked: string) => asked.startsWith('node:') || builtinModules.includes(asked.split('/')[0] ?? '')
const isUnder = (folder: string, path: string) => path.startsWith(`${folder}/`)

interface Room {
  /** Files the rule is about. */
  holds(path: string): boolean
  readonly name: string
  /** What they may import: a place in the project, or a package by name. */
  mayReach(place: string): boolean
  mayUse(name: string): boolean
}

const rooms: readonly Room[] = [
  {
    name: 'shared-types imports only zod',
    holds: (path) => isUnder('shared-types', path),
    mayReach: (place) => isUnder('shared-types', place),
    mayUse: (name) => name === 'zod' || name.startsWith('zod/'),
  },
  {
    name: 'renderer imports only shared-types and libraries of the page',
    holds: (path) => isUnder('renderer', path),
    mayReach: (place) => isUnder('renderer', place) || isUnder('shared-types', place) || isUnder('resources', place),
    mayUse: (name) => !isOfNode(name) && name !== 'electron',
  },
  {
    name: 'electron/analysis imports only shared-types and numeric libraries',
    holds: (path) => isUnder('electron/analysis', path) && !path.endsWith('-worker.ts'),
    mayReach: (place) => isUnder('electron/analysis', place) || isUnder('shared-types', place),
    mayUse: (name) => numericLibraries.test(name) || name === 'zod',
  },
  {
    name: 'electron never imports renderer',
    holds: (path) => isUnder('electron', path),
    mayReach: (place) => !isUnder('renderer', place) && !isUnder('tests', place),
    mayUse: () => true,
  },
]

/** Rule 1: what each folder may import. */
export function roomsKept({ files }: SourceTree): Fault[] {
  return files.flatMap((file) =>
    rooms
      .filter((room) => room.holds(file.path))
      .flatMap((room) =>
        file.imports
          .filter(({ asked }) => {
            const place = placeOf(file, asked)
            return place === null ? !room.mayUse(asked) : !room.mayReach(place)
          })
          .map(({ asked, line }) => ({ path: file.path, line, says: `${room.name}; this imports ${asked}` })),
      ),
  )
}

/** How far up a file of the main process stands; nothing below imports what is above it. */
function height(path: string): number | null {
  if (!isUnder('electron', path)) return null
  if (isUnder('electron/doors', path) || /^electron\/[\w-]+\.ts$/.test(path))
    return path === 'electron/places-on-disk.ts' ? 0 : 3
  if (isUnder('electron/use-cases', path)) return 2
  return 1
}

/** Rule 2, first half: door, use case, record and analysis and report; nothing below calls up. */
export function nothingCallsUp({ files }: SourceTree): Fault[] {
  return files.flatMap((file) => {
    const own = height(file.path)
    if (own === null) return []
    return file.imports.flatMap(({ asked, line }) => {
      const place = placeOf(file, asked)
      const other = place === null ? null : height(place)
      if (other === null || other <= own) return []
      return [{ path: file.path, line, says: `data flows from door to use case to record; this calls up to ${asked}` }]
    })
  })
}

/** Rule 2, second half: no import circles. Each circle is told once, at its first file in order. */
export function noCircles({ files }: SourceTree): Fault[] {
  const byPath = new Map(files.map((file) => [file.path, file]))
  const done = new Set<string>()
  const faults: Fault[] = []
  const walk = (file: SourceFile, way: readonly string[]): void => {
    if (done.has(file.path)) return
    for (const { asked, line } of file.imports) {
      const next = byPath.get(placeOf(file, asked) ?? '')
      if (next === undefined) continue
      const whole = [...way, file.path]
      const from = whole.indexOf(next.path)
      if (from < 0) walk(next, whole)
      else
        faults.push({
          path: file.path,
          line,
          says: `imports go in a circle: ${[...whole.slice(from), next.path].join(' > ')}`,
        })
    }
    done.add(file.path)
  }
  for (const file of files) walk(file, [])
  return faults
}
