import type { Writable } from 'node:stream'
import { setImmediate as turn } from 'node:timers/promises'
import { ObjectWriter } from './document/object-writer.ts'
import { type Anchor, ReportDocument } from './document/report-document.ts'
import { writeOutlines } from './drawing/locator.ts'
import { Composer, type PassBefore, type Stored } from './layout/composer.ts'
import { pageGeometry } from './layout/page-geometry.ts'
import { editionName } from './layout/running-matter.ts'
import { beginPictures } from './pictures.ts'
import { quotedContent } from './quoted-content.ts'
import type { ReportContent } from './report-content.ts'
import { composePlans } from './sections/body-plans.ts'
import { composeCanStillBe } from './sections/can-still-be.ts'
import { composeCertification } from './sections/certification.ts'
import { composeClaims } from './sections/claims.ts'
import { composeCoatingMaps } from './sections/coating-maps.ts'
import { composeCommission } from './sections/commission.ts'
import { composeCorrections } from './sections/corrections.ts'
import { composeCoverage } from './sections/coverage.ts'
import { composeDates } from './sections/dates.ts'
import { composeExhibits } from './sections/exhibits.ts'
import { composeFindings } from './sections/findings.ts'
import { composeGlossary } from './sections/glossary.ts'
import { composeIdentity } from './sections/identity.ts'
import { composeMeasurements } from './sections/measurements.ts'
import { composeMethod } from './sections/method.ts'
import { composeOriginality } from './sections/originality.ts'
import { composeParts } from './sections/parts.ts'
import { composeReadings } from './sections/readings.ts'
import { composeSummary } from './sections/summary.ts'
import { composeTitlePage } from './sections/title-page.ts'

/** In this order; the exhibits come last and carry the end mark. */
const sections: readonly ((composer: Composer) => void)[] = [
  composeTitlePage,
  composeSummary,
  composeCommission,
  composeIdentity,
  composeCanStillBe,
  composePlans,
  composeFindings,
  composeCoverage,
  composeReadings,
  composeCoatingMaps,
  composeMeasurements,
  composeParts,
  composeDates,
  composeClaims,
  composeOriginality,
  composeCorrections,
  composeMethod,
  composeGlossary,
  composeCertification,
  composeExhibits,
]

/** Setting settles in two or three passes; the bound only guards against two settings that take turns. */
const MOST_PASSES = 6

/**
 * Writes the report as a tagged PDF. Pictures are read and written while the pages are laid out, and only few are held at
 * once. The same content gives the same bytes, in any time zone. Ends `output`. Throws the reason of `stop` once that is
 * aborted; `output` then holds part of a report.
 */
export async function composeReport(
  content: ReportContent,
  output: Writable,
  stop?: AbortSignal,
): Promise<{ readonly pages: number; readonly byteLength: number; readonly sha256: string }> {
  stop?.throwIfAborted()
  const writer = new ObjectWriter(output)
  await writer.begin()
  const pictures = await beginPictures(writer, content)
  try {
    const stored: Stored = { pictures: pictures.stored, outlines: writeOutlines(writer, content.plan) }
    const document = await settle(quotedContent(content), writer, stored, stop)
    const ends = await document.write({
      title: `Originality and condition report: ${content.record.particulars.title}`,
      author: content.record.commission.examiner,
      subject: editionName(content),
      language: content.record.commission.names === 'us' ? 'en-US' : 'en-GB',
      issuedAt: content.edition.issuedAt,
    })
    await pictures.written
    const written = await writer.finish(ends.catalog, ends.information)
    await new Promise<void>((resolve, reject) => {
      output.once('error', reject)
      output.end(resolve)
    })
    return { pages: document.pages.length, ...written }
  } finally {
    // Nothing goes on beside once the answer is given, be it a fault.
    await pictures.written.catch(() => undefined)
  }
}

/**
 * Lays out again with the pages of the pass before, until every page number printed is the one that came out. The first
 * pass knows no page number and is measured only.
 */
async function settle(
  content: ReportContent,
  writer: ObjectWriter,
  stored: Stored,
  stop?: AbortSignal,
): Promise<ReportDocument> {
  const geometry = pageGeometry(content.paper)
  let before: PassBefore = { anchors: null, pages: 0 }
  for (let pass = 1; ; pass++) {
    const document = new ReportDocument(writer, geometry.widthMm, geometry.heightMm, pass === 1)
    const composer = new Composer(content, document, geometry, stored, before)
    for (const compose of sections) {
      compose(composer)
      // Pictures go on in between.
      await turn()
      stop?.throwIfAborted()
    }
    for (const _ of composer.flow.pages()) await turn()
    if (pass === MOST_PASSES || settled(before, document)) return document
    before = { anchors: document.anchors, pages: document.pages.length }
  }
}

function settled(before: PassBefore, document: ReportDocument): boolean {
  const { anchors, pages } = before
  if (anchors === null || pages !== document.pages.length || anchors.size !== document.anchors.size) return false
  const same = ([name, anchor]: [string, Anchor]) => anchors.get(name)?.page === anchor.page
  return [...document.anchors].every(same)
}
