import { stringify } from 'csv-stringify/sync'
import type { RequestInput } from '../../shared-types/contract.ts'
import { panelName } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { compareFastening } from '../analysis/sampling/compare-fastening.ts'
import { partDefinition } from '../sheets/parts-list.ts'
import { panelNameIn, panelStateOf, panelsOfRecord } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'

type TableName = RequestInput<'register.table'>['register']
type Cell = string | number | boolean | null
type Row = Readonly<Record<string, Cell>>

/** Marks the byte order, so that a spreadsheet reads the table as UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

/**
 * A cell a spreadsheet would take for a formula begins with an apostrophe, which makes it text (OWASP, CSV Injection:
 * = + - @ tab and carriage return). Numbers go out as numbers.
 */
function inert(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell !== 'string') return String(cell)
  return /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell) ? `'${cell}` : cell
}

const exhibitMarks = (numbers: readonly number[]): string =>
  numbers.map((number) => rowMark('exhibits', number)).join('; ')
const spotMarks = (spots: readonly { readonly number: number }[]): string =>
  spots.map(({ number }) => rowMark('spots', number)).join('; ')
const findingMarks = (numbers: readonly number[]): string =>
  numbers.map((number) => rowMark('findings', number)).join('; ')

const rowsOf: { readonly [T in TableName]: (view: RecordView) => readonly Row[] } = {
  panels: (view) =>
    panelsOfRecord(view).panels.map((definition) => {
      const { panelId, changedAt, ...state } = panelStateOf(view, definition.id)
      return {
        stop: definition.stop,
        panel: panelName(definition, view.commission.names),
        panelId,
        layer: definition.layer,
        walked: definition.walked,
        areaM2: definition.areaM2,
        ...state,
        findings: findingMarks(view.findings.filter((one) => one.panelId === panelId).map((one) => one.number)),
        changedAt: view.panels.some((one) => one.panelId === panelId) ? changedAt : '',
      }
    }),
  findings: (view) =>
    view.findings.map(({ number, extent, grade, exhibits, ...finding }) => ({
      finding: rowMark('findings', number),
      panel: panelNameIn(view, finding.panelId),
      ...finding,
      view: extent?.view ?? '',
      shape: extent?.shape ?? '',
      pointsMm: extent === null ? '' : extent.points.map((point) => `${point.u} ${point.v}`).join('; '),
      grade: grade === null ? '' : JSON.stringify(grade),
      exhibits: exhibitMarks(exhibits),
    })),
  spots: (view) =>
    view.spots.map(({ number, at, values, gauge, exhibits, ...spot }) => ({
      spot: rowMark('spots', number),
      panel: panelNameIn(view, spot.panelId),
      ...spot,
      uMm: at?.u ?? null,
      vMm: at?.v ?? null,
      valuesUm: values
        .map((value) =>
          value.kind === 'value' ? value.um : value.kind === 'more than' ? `> ${value.um}` : 'no reading',
        )
        .join('; '),
      gauge: gauge === null ? '' : rowMark('gauges', gauge),
      exhibits: exhibitMarks(exhibits),
    })),
  parts: (view) =>
    view.parts.map(({ exhibits, countsWith, fastening, ...entry }) => ({
      part: partDefinition(entry.partId)?.[view.commission.names] ?? '',
      ...entry,
      countsWith: countsWith === null ? '' : `${countsWith.set ?? 'none'}: ${countsWith.reason}`,
      fastening: fastening === null ? '' : compareFastening(fastening).words,
      exhibits: exhibitMarks(exhibits),
    })),
  claims: (view) =>
    view.claims.map(({ number, repeats, asserts, findings, exhibits, ...claim }) => ({
      claim: rowMark('claims', number),
      ...claim,
      repeats: repeats === null ? '' : rowMark('claims', repeats),
      asserts: asserts.map(({ variable, values }) => `${variable}: ${values.join(' or ')}`).join('; '),
      findings: findingMarks(findings),
      exhibits: exhibitMarks(exhibits),
    })),
  corrections: (view) =>
    view.corrections.map(
      ({ number, cost, findings, exhibitsBefore, exhibitsAfter, findingsAfter, coating, ...correction }) => ({
        correction: rowMark('corrections', number),
        ...correction,
        costLow: cost?.low ?? null,
        costLikely: cost?.likely ?? null,
        costHigh: cost?.high ?? null,
        costBasis: cost?.basis ?? '',
        pricedOn: cost?.pricedOn ?? '',
        currency: view.commission.currency,
        findings: findingMarks(findings),
        exhibitsBefore: exhibitMarks(exhibitsBefore),
        exhibitsAfter: exhibitMarks(exhibitsAfter),
        findingsAfter: findingMarks(findingsAfter),
        coatingPanel: coating === null ? '' : panelNameIn(view, coating.panelId),
        spotsBefore: spotMarks(coating?.before ?? []),
        spotsAfter: spotMarks(coating?.after ?? []),
      }),
    ),
  exhibits: (view) =>
    view.exhibits.map(({ number, at, photograph, measurement, picked, ...exhibit }) => ({
      exhibit: rowMark('exhibits', number),
      ...exhibit,
      uMm: at?.u ?? null,
      vMm: at?.v ?? null,
      fileName: photograph?.fileName ?? '',
      takenAt: photograph?.takenAt ?? '',
      takenOffset: photograph?.takenOffset ?? '',
      camera: photograph?.camera ?? '',
      sha256: photograph?.sha256 ?? '',
      measured: measurement?.what ?? '',
      value: measurement?.value ?? null,
      unit: measurement?.unit ?? '',
      expandedUncertainty: measurement?.uncertainty ?? null,
      pickedOn: picked === null ? '' : rowMark('exhibits', picked.photograph),
    })),
  carNumbers: (view) =>
    view.carNumbers.map(({ number, exhibits, ...row }) => ({
      number: rowMark('carNumbers', number),
      ...row,
      exhibits: exhibitMarks(exhibits),
    })),
}

/** A register as CSV (RFC 4180): head line, CRLF, UTF-8 with byte order mark, no cell a spreadsheet would run. */
export function registerTable(
  view: RecordView,
  register: TableName,
): { readonly fileName: string; readonly csv: string } {
  const rows = rowsOf[register](view)
  const head = Object.keys(rows[0] ?? {})
  const lines = [head, ...rows.map((row) => head.map((column) => inert(row[column] ?? null)))]
  const name = view.commission.recordNumber.replace(/[^\p{L}\p{N}-]+/gu, '-')
  const csv =
    BYTE_ORDER_MARK + stringify(rows.length === 0 ? [] : lines, { record_delimiter: 'windows', quoted_match: /[\r\n]/ })
  return { fileName: `${name}-${register}.csv`, csv }
}

export const tableUseCases: Pick<UseCases, 'register.table'> = {
  'register.table': async (program, { register }) => registerTable(program.record().view(), register),
}
