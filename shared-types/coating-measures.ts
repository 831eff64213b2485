import { thousands } from './thousands.ts'
import { type CoatingUnit, MM_PER_FOOT, MM_PER_INCH, metricUnits, type ShownUnits, UM_PER_MIL } from './units.ts'

const MINUS = '\u2212'
/** Narrow and unbreakable. A figure in mil or inches holds its unit by it: "5.6 in" is parted nowhere, and "in" is a word as well. */
const NARROW = '\u202f'

/** A kind of quantity in the unit of the record. Values are metric, as they are stored; what comes back is to be printed. */
export interface ShownQuantity {
  readonly unit: string
  /** The number alone, where the unit stands elsewhere or comes later. */
  figure(value: number): string
  /** The number with its unit: `218 µm`, `8.6 mil`. */
  text(value: number): string
  /** Two numbers with a word between and one unit: `190 to 240 µm`. */
  span(low: number, high: number, between?: string): string
  /** A difference with its sign: `+2.4 µm`. */
  signed(value: number): string
}

/** Everything coating is told in, in the units of one record. */
export interface CoatingMeasures {
  /** Thickness from µm: whole µm, or mil to a tenth. */
  readonly thickness: ShownQuantity
  /** Thickness that is told roughly: tens of µm from a thousand on, or mil to a tenth. */
  readonly roughThickness: ShownQuantity
  /** What is small against a film, such as an offset of a gauge, from µm: tenths of a µm, or hundredths of a mil. */
  readonly fineThickness: ShownQuantity
  /** Shims and what a gauge read on them, from µm: whole µm, or hundredths of a mil, since 2 µm between them count. */
  readonly checkedThickness: ShownQuantity
  /** A thickness as it was noted, from µm: as many decimals as it has, three at most, or mil to a hundredth. */
  readonly notedThickness: ShownQuantity
  /** Distance on a panel from mm: whole mm, or inches to a tenth. */
  readonly length: ShownQuantity
  /** What is small against a panel, such as a probe, from mm: as it was noted, or inches to a hundredth. */
  readonly smallLength: ShownQuantity
  /** Surface from m²: m² or square feet to a hundredth. */
  readonly surface: ShownQuantity
  /** Area from m²: three significant figures of m² or square feet. */
  readonly area: ShownQuantity
  /** Volume from cm³: three significant figures of cm³ or cubic inches. */
  readonly volume: ShownQuantity
  /** The same to two significant figures. */
  readonly roughVolume: ShownQuantity
}

const MM2_PER_M2 = 1e6
const MM3_PER_CM3 = 1000

type Written = (value: number) => string

const fixed =
  (decimals: number): Written =>
  (value) =>
    value.toFixed(decimals)
/** No decimal that says nothing; at most so many. */
const noted =
  (most: number): Written =>
  (value) =>
    String(Number(value.toFixed(most)))
const significant =
  (digits: number): Written =>
  (value) =>
    value.toLocaleString('en', { maximumSignificantDigits: digits, useGrouping: false })
const tensFromThousand: Written = (value) => String(value >= 1000 ? Math.round(value / 10) * 10 : Math.round(value))

function quantity(unit: string, per: number, written: Written): ShownQuantity {
  const size = (value: number) => thousands(written(Math.abs(value) / per))
  const figure = (value: number) => {
    const printed = size(value)
    return value < 0 && /[1-9]/.test(printed) ? `${MINUS}${printed}` : printed
  }
  // Metric words keep the space they were always typed with; where they are set it is held as in any typed quantity.
  const space = per === 1 ? ' ' : NARROW
  return {
    unit,
    figure,
    text: (value) => `${figure(value)}${space}${unit}`,
    span: (low, high, between = 'to') => `${figure(low)} ${between} ${figure(high)}${space}${unit}`,
    signed: (value) => `${value < 0 ? MINUS : '+'}${size(value)}${space}${unit}`,
  }
}

const thicknessIn = (unit: CoatingUnit, micrometres: Written, mil: Written): ShownQuantity =>
  unit === 'µm' ? quantity('µm', 1, micrometres) : quantity('mil', UM_PER_MIL, mil)

const thicknesses: Readonly<Record<CoatingUnit, ShownQuantity>> = {
  µm: thicknessIn('µm', fixed(0), fixed(1)),
  mil: thicknessIn('mil', fixed(0), fixed(1)),
}

/** A coating thickness in the chosen unit, from micrometres, number only: whole µm, or mil to a tenth. */
export const coatingFigure = (um: number, unit: CoatingUnit): string => thicknesses[unit].figure(um)

/** Words and figures for coating in the units of a record. */
export function coatingMeasures({ coatingUnit, lengthUnit }: ShownUnits): CoatingMeasures {
  const metric = lengthUnit === 'mm'
  const lengthIn = (millimetres: Written, inches: Written) =>
    metric ? quantity('mm', 1, millimetres) : quantity('in', MM_PER_INCH, inches)
  const areaIn = (written: Written) =>
    metric ? quantity('m²', 1, written) : quantity('ft²', MM_PER_FOOT ** 2 / MM2_PER_M2, written)
  const volumeIn = (written: Written) =>
    metric ? quantity('cm³', 1, written) : quantity('in³', MM_PER_INCH ** 3 / MM3_PER_CM3, written)
  return {
    thickness: thicknesses[coatingUnit],
    roughThickness: thicknessIn(coatingUnit, tensFromThousand, fixed(1)),
    fineThickness: thicknessIn(coatingUnit, fixed(1), fixed(2)),
    checkedThickness: thicknessIn(coatingUnit, fixed(0), fixed(2)),
    notedThickness: thicknessIn(coatingUnit, noted(3), noted(2)),
    length: lengthIn(fixed(0), fixed(1)),
    smallLength: lengthIn(noted(3), noted(2)),
    surface: areaIn(fixed(2)),
    area: areaIn(significant(3)),
    volume: volumeIn(significant(3)),
    roughVolume: volumeIn(significant(2)),
  }
}

/** Lengths and thicknesses of a row of the record, fine enough that no two that were noted look alike. */
export function keptMeasures({ coatingUnit, lengthUnit }: ShownUnits): Pick<CoatingMeasures, 'thickness' | 'length'> {
  return {
    thickness: thicknessIn(coatingUnit, noted(4), noted(4)),
    length: lengthUnit === 'mm' ? quantity('mm', 1, noted(4)) : quantity('in', MM_PER_INCH, noted(4)),
  }
}

/** Words of a computation: in the units its question names, or metric. */
export const askedMeasures = ({ shownIn }: { readonly shownIn?: ShownUnits | undefined }): CoatingMeasures =>
  coatingMeasures(shownIn ?? metricUnits)
