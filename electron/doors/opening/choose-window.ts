import { type BinaryPlaces, fetchBinary, presentBinary } from './electron-binary.ts'

export interface Surroundings {
  readonly platform: NodeJS.Platform
  readonly environment: NodeJS.ProcessEnv
  /** True for the superuser of a Unix system, as whom no browser keeps its sandbox. */
  readonly isSuperuser: boolean
}

/** The machine as it is. */
export const surroundings = (): Surroundings => ({
  platform: process.platform,
  environment: process.env,
  isSuperuser: process.getuid?.() === 0,
})

/** Why no window of any kind can be shown here; null when one can. */
export function whyNoWindow({ platform, environment, isSuperuser }: Surroundings): string | null {
  const isUnixDesktop = platform !== 'darwin' && platform !== 'win32'
  if (isUnixDesktop && !environment.DISPLAY && !environment.WAYLAND_DISPLAY) return 'this session has no screen'
  if (isSuperuser) return 'a superuser gets no window, since its sandbox would be off'
  return null
}

export type Choice = { readonly binary: string } | { readonly asPageBecause: string }

/** The desktop window's binary, fetched if need be, or the reason why the program opens as a page. */
export function chooseWindow(
  around: Surroundings,
  places: BinaryPlaces,
  insist: boolean,
  say: (line: string) => void,
): Choice {
  const none = whyNoWindow(around)
  if (none !== null) return { asPageBecause: none }
  const present = presentBinary(places)
  if (present !== null) return { binary: present }
  const failure = fetchBinary(places, insist, say)
  const fetched = failure === null ? presentBinary(places) : null
  return fetched === null
    ? { asPageBecause: `the desktop window could not be fetched (${failure ?? 'it is not where it should be'})` }
    : { binary: fetched }
}
