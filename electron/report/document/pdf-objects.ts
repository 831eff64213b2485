import { createRequire } from 'node:module'
import type * as PdfLibrary from 'pdf-lib'

export type { PDFDict, PDFObject, PDFRef } from 'pdf-lib'
export type PDFContext = PdfLibrary.PDFContext

/**
 * The objects of PDF from the library, and nothing else of it: opened by their own files, since the library's front
 * door loads its forms, standard fonts and image readers too, which takes longer than composing ten pages.
 */
const requirePackage = createRequire(import.meta.url)
const opened = <Name extends 'PDFContext' | 'PDFHexString' | 'PDFString'>(file: string) =>
  (requirePackage(`pdf-lib/cjs/core/${file}.js`) as { readonly default: (typeof PdfLibrary)[Name] }).default

export const PDFContext = opened<'PDFContext'>('PDFContext')
export const PDFHexString = opened<'PDFHexString'>('objects/PDFHexString')
export const PDFString = opened<'PDFString'>('objects/PDFString')
