import {
  CAPS_SPACING,
  FIGURE_SHARE,
  KEY_CAP_RADIUS_PX,
  lineWeights,
  markWeights,
  rules,
  type SheetName,
  sheetLineFactor,
  sheets,
  sheetTypeFactor,
  spacing,
  TOUCH_TARGET_PX,
  typeScale,
  typeWeights,
  unseenEdge,
  windowWidths,
} from '../../shared-types/tokens.ts'

const dashed = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** Rules of the page keep to whole pixels, so that each is as black as the next; the row rule stays thin on every sheet. */
const ruleOn = (sheetName: SheetName, px: number): number =>
  sheetName === 'outdoor' && px > rules.row ? Math.round(px * sheetLineFactor.outdoor) : px

/** Colours, type, lines and spaces of a sheet, as custom properties: `--ink`, `--text-size`, `--line-shut`, `--space-3`. */
function propertiesOf(sheetName: SheetName): [string, string][] {
  const type = sheetTypeFactor[sheetName]
  const line = sheetLineFactor[sheetName]
  return [
    ...Object.entries(sheets[sheetName]).map(([role, colour]): [string, string] => [dashed(role), colour]),
    ...Object.entries(typeScale).flatMap(([name, [size, height]]): [string, string][] => [
      [`${dashed(name)}-size`, `round(${size * type}px * var(--window-type), 0.5px)`],
      [`${dashed(name)}-line`, `round(${height * type}px * var(--window-line), 1px)`],
    ]),
    ...Object.entries(typeWeights).map(([name, weight]): [string, string] => [dashed(name), String(weight)]),
    ['figure-share', String(FIGURE_SHARE)],
    ['caps-spacing', `${CAPS_SPACING}em`],
    ...Object.entries(lineWeights).map(([name, { px }]): [string, string] => [
      `line-${dashed(name)}`,
      `calc(${px * line}px * var(--window-stroke))`,
    ]),
    ...Object.entries({ ...markWeights, unseen: unseenEdge.dotPx }).map(([name, px]): [string, string] => [
      `mark-${dashed(name)}`,
      `calc(${px * line}px * var(--window-stroke))`,
    ]),
    ['sheet-line', String(line)],
    ...Object.entries(rules).map(([name, px]): [string, string] => [`rule-${name}`, `${ruleOn(sheetName, px)}px`]),
    ...spacing.map((px, step): [string, string] => [`space-${step + 1}`, `${px}px`]),
    ['key-cap-radius', `${KEY_CAP_RADIUS_PX}px`],
    ['touch-target', `${TOUCH_TARGET_PX}px`],
  ]
}

/** The measures of each width of window, from which the style sheet takes those of the window it stands in. */
function windowProperties(sheetName: SheetName): [string, string][] {
  return Object.entries(windowWidths).flatMap(([name, { rail, sheet, secondSheet, margin, type, line, stroke }]) => [
    // A narrow rail holds figures alone; a wider one must hold its words.
    [`${name}-rail`, `${name === 'narrow' ? rail : Math.round(rail * sheetTypeFactor[sheetName])}px`],
    [`${name}-sheet`, `${sheet}px`],
    [`${name}-second-sheet`, `${secondSheet}px`],
    [`${name}-margin`, `${margin}px`],
    [`${name}-type`, String(type)],
    [`${name}-line`, String(line)],
    [`${name}-stroke`, String(stroke)],
  ])
}

/** Lays the design tokens of a sheet on the page. */
export function applyTokens(sheetName: SheetName): void {
  const root = document.documentElement
  root.dataset.sheet = sheetName
  root.style.colorScheme = sheetName === 'night' ? 'dark' : 'light'
  for (const [name, value] of [...propertiesOf(sheetName), ...windowProperties(sheetName)]) {
    root.style.setProperty(`--${name}`, value)
  }
}
