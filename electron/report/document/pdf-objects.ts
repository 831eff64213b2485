export { PDFContext, type PDFDict, PDFHexString, type PDFObject, type PDFRef, PDFString } from 'pdf-lib'
