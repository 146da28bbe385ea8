import { describe, expect, it } from 'vitest';
import { escapeXml, type Sheet } from '../../ir/index.js';
import { svgOf } from './svg.js';

const sheet: Sheet = {
  id: 'S-101',
  title: 'Plan <1> & "more"',
  discipline: 'S',
  size: 'ANSI B',
  scaleNote: '',
  viewports: [
    {
      name: 'plan',
      at: { x: 1, y: 1 },
      from: { x: 0, y: 0 },
      scale: 1 / 48,
      items: [
        { kind: 'line', layer: 'S-BEAM', pen: 'new', a: { x: 0, y: 0 }, b: { x: 48, y: 0 }, mark: 'B1' },
        {
          kind: 'line',
          layer: 'S-BEAM',
          pen: 'hidden',
          a: { x: 0, y: 4 },
          b: { x: 48, y: 4 },
          mark: 'B1',
          path: '/cover/beams/0',
        },
        {
          kind: 'arc',
          layer: 'A-DOOR-EXST',
          pen: 'existing',
          center: { x: 0, y: 0 },
          radius: 48,
          start: 0,
          end: Math.PI / 2,
        },
      ],
    },
  ],
  items: [
    {
      kind: 'text',
      layer: 'G-ANNO-NOTE',
      at: { x: 2, y: 3 },
      content: 'A < B & "C" > \u0007\'D\'',
      height: 0.125,
      align: 'right',
      angle: Math.PI / 2,
    },
  ],
};

describe('svgOf', () => {
  const svg = svgOf(sheet);
  it('states its size in inches and turns y down', () => {
    expect(svg).toContain('width="17in" height="11in" viewBox="0 0 1700 1100"');
    expect(svg).toContain('d="M100 1000L200 1000"');
  });
  it('escapes what users write and drops what XML cannot hold', () => {
    expect(svg).toContain('A &lt; B &amp; &quot;C&quot; &gt; &#39;D&#39;</text>');
    expect(svg).toContain('<title>S-101 Plan &lt;1&gt; &amp; &quot;more&quot;</title>');
    expect(escapeXml('a\u0000b')).toBe('ab');
  });
  it('names each part once and marks all its strokes', () => {
    expect(svg.match(/id="S-101\.B1"/g)).toHaveLength(1);
    expect(svg.match(/data-mark="B1"/g)).toHaveLength(2);
    expect(svg).toContain('data-path="/cover/beams/0"');
  });
  it('groups by layer in painting order', () => {
    expect([...svg.matchAll(/<g data-layer="([^"]+)">/g)].map((m) => m[1])).toEqual([
      'S-BEAM',
      'A-DOOR-EXST',
      'G-ANNO-NOTE',
    ]);
    expect(svg.match(/<g /g)!.length).toBe(svg.match(/<\/g>/g)!.length);
  });
  it('draws an arc counter-clockwise as seen on paper', () => {
    expect(svg).toContain('d="M200 1000A100 100 0 0 0 100 900"');
  });
  it('sizes lettering by its capitals and turns it counter-clockwise', () => {
    expect(svg).toContain('font-size="17.91" text-anchor="end" transform="rotate(-90 200 800)"');
  });
  it('is the same twice', () => expect(svgOf(sheet)).toBe(svg));
  it('can leave the style sheet to the page', () => {
    expect(svgOf(sheet, { bare: true })).not.toContain('<style>');
    expect(svgOf(sheet, { css: '@font-face{}' })).toContain('@font-face{}');
  });
});
