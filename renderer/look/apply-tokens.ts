import {
  NIGHT_LINE_FACTOR,
  type SheetName,
  sheets,
  spacing,
  TOUCH_TARGET_PX,
  typeScale,
} from '../../shared-types/tokens.ts'

const dashed = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** Writes the design tokens of a sheet as custom properties on the page: `--ink`, `--text-size`, `--space-3`. */
export function applyTokens(sheetName: SheetName): void {
  const root = document.documentElement
  root.dataset.sheet = sheetName
  root.style.colorScheme = sheetName === 'paper' ? 'light' : 'dark'
  for (const [role, colour] of Object.entries(sheets[sheetName])) root.style.setProperty(`--${dashed(role)}`, colour)
  for (const [name, [size, line]] of Object.entries(typeScale)) {
    root.style.setProperty(`--${dashed(name)}-size`, `${size}px`)
    root.style.setProperty(`--${dashed(name)}-line`, `${line}px`)
  }
  spacing.forEach((px, step) => {
    root.style.setProperty(`--space-${step + 1}`, `${px}px`)
  })
  root.style.setProperty('--touch-target', `${TOUCH_TARGET_PX}px`)
  root.style.setProperty('--night-line', String(sheetName === 'night' ? NIGHT_LINE_FACTOR : 1))
}
