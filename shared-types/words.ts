import { z } from 'zod'

/** State of a panel's metal, in the words printed everywhere. */
export const metalState = z.enum([
  'original metal',
  'repaired metal',
  'patch panel',
  'replacement skin',
  'replacement panel',
  'filler over metal',
  'filler in place of metal',
  'not determined',
  'not inspected',
])
export type MetalState = z.infer<typeof metalState>

/** State of a panel's paint. */
export const paintState = z.enum(['factory finish', 'refinished', 'stripped', 'not determined', 'not inspected'])
export type PaintState = z.infer<typeof paintState>

/** Whether a panel has been looked at. Neither of the first two ever counts as good. */
export const inspectionState = z.enum(['not inspected', 'not accessible', 'inspected'])
export type InspectionState = z.infer<typeof inspectionState>

/** State of a part against what this car should carry. */
export const partState = z.enum([
  'factory fitted',
  'period accessory',
  'right type, wrong date',
  'new old stock',
  'reproduction',
  'later fitment',
  'home-made',
  'missing',
  'not determined',
  'not seen',
])
export type PartState = z.infer<typeof partState>

/** What a finding is. Order is the order of the keys that choose it. */
export const findingKind = z.enum([
  'corrosion',
  'perforation',
  'filler',
  'dent',
  'crack',
  'distortion',
  'overspray',
  'masking edge',
  'seam disturbed',
  'weld',
  'wrong or disturbed fastening',
  'missing',
  'added',
  'wear',
  'other',
])
export type FindingKind = z.infer<typeof findingKind>

/** How bad the material is, apart from what should be done about it (after EN 16096:2012). */
export const severity = z.enum(['none', 'slight', 'marked', 'severe'])

/** When the recommended measure should be taken, apart from severity (after EN 16096:2012). */
export const urgency = z.enum(['none', 'later', 'within a year', 'before use', 'at once'])

/** What is recommended, apart from severity and urgency (after EN 16096:2012). */
export const recommendedAction = z.enum([
  'record only',
  'keep as it is',
  'watch',
  'examine further',
  'clean and protect',
  'repair',
  'replace',
  'make safe',
])

/** How a thing was learned; one of these words stands by each conclusion. */
export const howLearned = z.enum(['seen', 'felt', 'measured', 'told', 'inferred'])

/** Which layer of a panel a finding lies in. */
export const findingLayer = z.enum(['paint', 'skin', 'inner'])
export type FindingLayer = z.infer<typeof findingLayer>

/** Which layer of the car a stop of the walk belongs to; coverage is counted by it. */
export const walkLayer = z.enum(['outer', 'inner', 'under'])
export type WalkLayer = z.infer<typeof walkLayer>
/** What the layers of the walk are called, on screen and in print. */
export const walkLayerWords: { readonly [L in WalkLayer]: string } = {
  outer: 'outer',
  inner: 'inner',
  under: 'underneath',
}

/** How far the inspection goes; chosen before the walk and printed in the report. */
export const inspectionLevel = z.enum(['outside only', 'with openings', 'with inside', 'with underneath'])
export type InspectionLevel = z.infer<typeof inspectionLevel>

/** Body styles, as neutral ids. */
export const bodyStyle = z.enum(['saloon2', 'saloon4', 'coupe', 'convertible', 'estate', 'pickup', 'van'])
export type BodyStyle = z.infer<typeof bodyStyle>

/** Which English names are shown; the record stores neutral ids. */
export const nameChoice = z.enum(['us', 'uk'])
export type NameChoice = z.infer<typeof nameChoice>

/** How two panels of a body are joined, or the gap that is left between them. */
export const jointKind = z.enum([
  'bolted',
  'spot-welded-flange',
  'leaded-seam',
  'seam-welded',
  'hemmed-edge',
  'rubber-mounted',
  'cloth-edge',
  'hinge-gap',
  'shut-gap',
  'clearance-gap',
])
export type JointKind = z.infer<typeof jointKind>

/** Verdict on a claim. */
export const verdict = z.enum(['supported', 'contradicted', 'not settled'])

/** Steps that touch or change the car, each needing the owner's leave. */
export const intrusiveStep = z.enum([
  'lift the car',
  'unscrew',
  'wipe',
  'borescope',
  'pour water',
  'connect a battery',
  'start the engine',
  'drive',
  'take a paint sample',
])
export type IntrusiveStep = z.infer<typeof intrusiveStep>
