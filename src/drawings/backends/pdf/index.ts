export { type FontBytes, type PdfOptions, pdfOf } from './document.js';
