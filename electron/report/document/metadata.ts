import type { ObjectWriter } from './object-writer.ts'
import { PDFHexString, type PDFRef, PDFString } from './pdf-objects.ts'
import { srgbProfile } from './srgb-profile.ts'

/** What the file says of itself. `issuedAt` is UTC with milliseconds; nothing else of time goes into the file. */
export interface DocumentFacts {
  readonly title: string
  readonly author: string
  readonly subject: string
  readonly language: string
  readonly issuedAt: string
}

const PROGRAM = 'Witnessmark'

/** Text as XML, without the characters XML 1.0 has no place for. */
function xml(text: string): string {
  return [...text]
    .filter((character) => !/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/u.test(character))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
}

/** Writes the XMP packet (ISO 16684-1), the information dictionary and the output intent; answers their references. */
export function writeMetadata(
  writer: ObjectWriter,
  facts: DocumentFacts,
): { readonly xmp: PDFRef; readonly information: PDFRef; readonly intent: PDFRef } {
  const { context } = writer
  const [xmp, information, intent, profile] = Array.from({ length: 4 }, () => context.nextRef()) as [
    PDFRef,
    PDFRef,
    PDFRef,
    PDFRef,
  ]
  const seconds = `${facts.issuedAt.slice(0, 19)}Z`
  const packet = `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xml(facts.title)}</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>${xml(facts.author)}</rdf:li></rdf:Seq></dc:creator>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">${xml(facts.subject)}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>${facts.language}</rdf:li></rdf:Bag></dc:language>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<xmp:CreateDate>${seconds}</xmp:CreateDate><xmp:ModifyDate>${seconds}</xmp:ModifyDate>
<xmp:MetadataDate>${seconds}</xmp:MetadataDate><xmp:CreatorTool>${PROGRAM}</xmp:CreatorTool>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"><pdf:Producer>${PROGRAM}</pdf:Producer></rdf:Description>
</rdf:RDF></x:xmpmeta>
<?xpacket end="w"?>`
  // The packet stays uncompressed so that any program finds it.
  writer.writeLater(xmp, context.obj({ Type: 'Metadata', Subtype: 'XML' }), Buffer.from(packet, 'utf8'))
  const date = PDFString.of(`D:${facts.issuedAt.slice(0, 19).replace(/\D/g, '')}Z`)
  writer.write(
    information,
    context.obj({
      Title: PDFHexString.fromText(facts.title),
      Author: PDFHexString.fromText(facts.author),
      Subject: PDFHexString.fromText(facts.subject),
      Creator: PDFString.of(PROGRAM),
      Producer: PDFString.of(PROGRAM),
      CreationDate: date,
      ModDate: date,
    }),
  )
  writer.writeCompressed(profile, context.obj({ N: 3 }), srgbProfile())
  writer.write(
    intent,
    context.obj({
      Type: 'OutputIntent',
      S: 'GTS_PDFA1',
      OutputConditionIdentifier: PDFString.of('sRGB IEC61966-2.1'),
      Info: PDFString.of('sRGB IEC61966-2.1'),
      DestOutputProfile: profile,
    }),
  )
  return { xmp, information, intent }
}
