import { given, maybe, part } from './leaf.js';
import { choice, text } from './plain.js';
import { length } from './quantities.js';

const section = (what: string) => given(text(`Name of the section under choices for ${what}.`, 'beam'));

export const rakeFraming = part(
  'Outlookers that carry the overhang past the end frames. Left out: the sheathing alone carries it, which is right for a foot at most.',
  {
    section: section('the outlookers'),
    lay: given(choice('How they lie: on the wide face, or on edge.', ['flat', 'edge'])),
    spacing: given(length('Greatest distance between them along the slope.', '24 in', 8, 48)),
    barge: section('the barge board'),
    endFrame: maybe(
      text(
        'Section of the end rafters, shallower by the outlookers that pass over them; not with trusses.',
        'end-rafter',
      ),
    ),
  },
);
