/**
 * The drawing form. A view makes primitives in model inches; a sheet places them through viewports and adds what stands on
 * paper; `flatten` resolves scale, clipping, hatches and dimensions; back-ends draw what is left: paths, arcs, texts.
 *
 * How to write a sheet:
 *
 * ```ts
 * const style = styleFor('ARCH D');                          // annotate/: text heights and spacings of this sheet size
 * const room = drawingArea('ARCH D');                        // paper rectangle left by frame and title block
 * const scale = SCALES['1/4'];
 * const plan: Primitive[] = [
 *   { kind: 'polyline', layer: 'S-SLAB', pen: 'new', closed: true, points: slab },
 *   { kind: 'hatch', layer: 'S-FNDN-PATT', pattern: 'concrete', loops: [footing], mark: 'F1' },
 * ];
 * const dims = dimString({ side: 'below', datum: 0, scale: scale.ratio, layer: 'S-ANNO-DIMS', style,
 *   tiers: [{ stations: [0, 144, 288] }, { stations: [0, 288] }] });    // nearest tier first
 * const over = [...dims.items, tag({ kind: 'footing', text: 'F1', at: corner, layer: 'S-ANNO-SYMB', style })];
 * const view = centeredViewport({ name: 'footing plan', box: room, model: extents, scale: scale.ratio, items: plan, over });
 * const title = viewTitle({ at: below, number: '1', title: 'Footing plan', scale: scale.label, style });
 * const sheet: Sheet = { id: 'S-101', title: 'Footing plan', discipline: 'S', size: 'ARCH D', scaleNote: scale.label,
 *   viewports: [view], items: [...title.items, ...titleBlock('ARCH D', job, { id: 'S-101', ... })] };
 * svgOf(sheet);  await pdfOf([sheet], fonts, { title, date });          // backends/
 * ```
 *
 * Rules of thumb: a pen says how heavy, a layer says what; give `mark` to every part so that a click finds it; notes beside a
 * view go through `noteColumn` in paper inches (`toPaper(view, point)` finds the target); text on hatch gets `mask: true`.
 */
export * from './clip.js';
export * from './dimension.js';
export * from './faces.js';
export * from './flatten.js';
export * from './layer.js';
export { type LineFamily, PATTERNS, type Pattern, type PatternName } from './pattern.js';
export * from './pen.js';
export * from './primitive.js';
export * from './scale.js';
export * from './sheet.js';
export * from './text.js';
export * from './xml.js';
