export { PAPER_STYLE, PAPER_WIDTH, type Paper, type PaperData, papersOf } from './papers.js';
