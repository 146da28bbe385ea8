import { formatLength, formatNumber } from '../../base/quantity/index.js';
import type { Project } from '../../project/model.js';
import type { Layout } from './model.js';

/** A field as every spreadsheet program reads it (RFC 4180); a leading sign that starts a formula is kept from doing so. */
export const csvField = (text: string): string => {
  const safe = /^[=+@]/.test(text) || /^-(?![\d.])/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};
export const csvLine = (fields: readonly string[]): string => `${fields.map(csvField).join(',')}\r\n`;

const METRES = 0.0254;

/** Points to stake: name, place as the trade writes it and in decimals, level from the finished floor, note. */
export function stakeCsv(layout: Layout, project: Project): string {
  const { units } = project.job;
  const metric = units === 'metric';
  const unit = metric ? 'm' : 'ft';
  const decimal = (v: number): string => formatNumber(metric ? v * METRES : v / 12, 4, { group: false });
  const len = (v: number): string => formatLength(v, { units });
  return [
    ['name', 'along', 'out', 'level', `x ${unit}`, `y ${unit}`, `z ${unit}`, 'note'],
    ...layout.points.map((p) => [
      p.name,
      len(p.along),
      len(p.out),
      p.level === undefined ? '' : len(p.level),
      decimal(p.along),
      decimal(p.out),
      p.level === undefined ? '' : decimal(p.level),
      p.note,
    ]),
  ]
    .map(csvLine)
    .join('');
}
