/** Six frames, told once: from here come both the decks of the finite-element program and our own models. */
import { type Vec3, v3 } from '../../../src/base/vec.js';

export interface Member {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Width and depth of the rectangle, in. */
  readonly section: readonly [number, number];
  /** Reference for the depth. */
  readonly up: Vec3;
  /** Finite elements along the member; even, so that one ends at mid-length. */
  readonly pieces: number;
  /** Ends that pass no bending moment; `start` and `end` of the member. */
  readonly hinged?: readonly ('start' | 'end')[];
  /** Of a member hinged at both ends: the end that passes no torsion either. */
  readonly loose?: 'start' | 'end';
}

export interface Held {
  readonly node: string;
  /** 1 to 3 displacements, 4 to 6 rotations about global x, y, z. */
  readonly freedoms: readonly number[];
  /** Given displacement of one of the freedoms, in. */
  readonly moved?: { readonly freedom: number; readonly by: number };
}

export interface FrameCaseData {
  readonly name: string;
  readonly title: string;
  /** Everything stays in the x-z plane. */
  readonly planar: boolean;
  readonly nodes: Readonly<Record<string, Vec3>>;
  readonly members: readonly Member[];
  readonly held: readonly Held[];
  /** lb at a node. */
  readonly forces: Readonly<Record<string, Vec3>>;
  /** lb per inch of member, global axes. */
  readonly uniform: Readonly<Record<string, Vec3>>;
}

/** psi. Without Poisson's ratio a section keeps its shape, as a beam's does; so G = E/2. */
export const E = 1_500_000;
export const G = E / 2;

const up = v3(0, 0, 1);
const side = v3(1, 0, 0);
const bar = (
  name: string,
  from: string,
  to: string,
  section: readonly [number, number],
  pieces = 20,
  more: Partial<Member> = {},
): Member => ({ name, from, to, section, up, pieces, ...more });

const beam: FrameCaseData = {
  name: 'continuous-overhang',
  title: 'beam over three supports with an overhang',
  planar: true,
  nodes: { A: v3(0, 0, 0), B: v3(144, 0, 0), C: v3(264, 0, 0), D: v3(312, 0, 0) },
  members: [
    bar('AB', 'A', 'B', [3.5, 9.25]),
    bar('BC', 'B', 'C', [3.5, 9.25], 16),
    bar('CD', 'C', 'D', [3.5, 9.25], 8),
  ],
  held: [
    { node: 'A', freedoms: [1, 3] },
    { node: 'B', freedoms: [3] },
    { node: 'C', freedoms: [3] },
  ],
  forces: { D: v3(0, 0, -400) },
  uniform: { AB: v3(0, 0, -20), BC: v3(0, 0, -12), CD: v3(0, 0, -20) },
};

const BRACE = { hinged: ['start', 'end'], loose: 'start' } as const;
const braced: FrameCaseData = {
  name: 'knee-braced-bent',
  title: 'bent on pinned posts with hinged knee braces',
  planar: true,
  nodes: {
    A: v3(0, 0, 0),
    B: v3(0, 0, 72),
    C: v3(0, 0, 108),
    D: v3(36, 0, 108),
    E: v3(132, 0, 108),
    F: v3(168, 0, 108),
    G: v3(168, 0, 72),
    H: v3(168, 0, 0),
  },
  members: [
    bar('AB', 'A', 'B', [5.5, 5.5], 12, { up: side }),
    bar('BC', 'B', 'C', [5.5, 5.5], 6, { up: side }),
    bar('CD', 'C', 'D', [5.5, 7.5], 6),
    bar('DE', 'D', 'E', [5.5, 7.5], 14),
    bar('EF', 'E', 'F', [5.5, 7.5], 6),
    bar('GF', 'G', 'F', [5.5, 5.5], 6, { up: side }),
    bar('HG', 'H', 'G', [5.5, 5.5], 12, { up: side }),
    bar('BD', 'B', 'D', [3.5, 3.5], 12, BRACE),
    bar('GE', 'G', 'E', [3.5, 3.5], 12, BRACE),
  ],
  held: [
    { node: 'A', freedoms: [1, 3] },
    { node: 'H', freedoms: [1, 3] },
  ],
  forces: { C: v3(900, 0, 0) },
  uniform: { CD: v3(0, 0, -25), DE: v3(0, 0, -25), EF: v3(0, 0, -25) },
};

const scissor: FrameCaseData = {
  name: 'scissor-truss',
  title: 'scissor truss with continuous chords, unequal loads',
  planar: true,
  nodes: {
    L: v3(0, 0, 0),
    M: v3(60, 0, 18),
    R: v3(240, 0, 0),
    N: v3(180, 0, 18),
    T: v3(120, 0, 36),
    P: v3(60, 0, 47.5),
    Q: v3(180, 0, 47.5),
    S: v3(120, 0, 95),
  },
  members: [
    bar('LP', 'L', 'P', [1.5, 5.5], 16),
    bar('PS', 'P', 'S', [1.5, 5.5], 16),
    bar('RQ', 'R', 'Q', [1.5, 5.5], 16),
    bar('QS', 'Q', 'S', [1.5, 5.5], 16),
    bar('LM', 'L', 'M', [1.5, 5.5], 16),
    bar('MT', 'M', 'T', [1.5, 5.5], 16),
    bar('RN', 'R', 'N', [1.5, 5.5], 16),
    bar('NT', 'N', 'T', [1.5, 5.5], 16),
    bar('TS', 'T', 'S', [1.5, 3.5], 12, { up: side }),
    bar('MP', 'M', 'P', [1.5, 3.5], 8, { up: side }),
    bar('NQ', 'N', 'Q', [1.5, 3.5], 8, { up: side }),
  ],
  held: [
    { node: 'L', freedoms: [1, 3] },
    { node: 'R', freedoms: [3] },
  ],
  forces: { P: v3(60, 0, -250) },
  uniform: { LP: v3(0, 0, -4), PS: v3(0, 0, -4), RQ: v3(0, 0, -2), QS: v3(0, 0, -2) },
};

const post = (name: string, from: string, to: string): Member => bar(name, from, to, [5.5, 5.5], 20, { up: side });
const portal: FrameCaseData = {
  name: 'space-portal',
  title: 'four posts fixed at the base; beams hinged one way, rigid the other',
  planar: false,
  nodes: {
    A: v3(0, 0, 0),
    B: v3(144, 0, 0),
    C: v3(144, 120, 0),
    D: v3(0, 120, 0),
    a: v3(0, 0, 108),
    b: v3(144, 0, 108),
    c: v3(144, 120, 108),
    d: v3(0, 120, 108),
  },
  members: [
    post('Aa', 'A', 'a'),
    post('Bb', 'B', 'b'),
    post('Cc', 'C', 'c'),
    post('Dd', 'D', 'd'),
    bar('ab', 'a', 'b', [3.5, 7.25], 20, BRACE),
    bar('dc', 'd', 'c', [3.5, 7.25], 20, BRACE),
    bar('ad', 'a', 'd', [5.5, 5.5]),
    bar('bc', 'b', 'c', [5.5, 5.5]),
  ],
  held: ['A', 'B', 'C', 'D'].map((node) => ({ node, freedoms: [1, 2, 3, 4, 5, 6] })),
  forces: { a: v3(500, 150, 0), d: v3(200, 300, 0) },
  uniform: { ab: v3(0, 3, -15), dc: v3(0, 0, -15), ad: v3(0, 0, -8), bc: v3(2, 0, -8) },
};

const settled: FrameCaseData = {
  name: 'support-settlement',
  title: 'two-bay frame whose middle post sinks and whose last post slides',
  planar: true,
  nodes: {
    A: v3(0, 0, 0),
    B: v3(120, 0, 0),
    C: v3(264, 0, 0),
    a: v3(0, 0, 96),
    b: v3(120, 0, 96),
    c: v3(264, 0, 96),
  },
  members: [
    bar('Aa', 'A', 'a', [5.5, 5.5], 16, { up: side }),
    bar('Bb', 'B', 'b', [5.5, 5.5], 16, { up: side }),
    bar('Cc', 'C', 'c', [5.5, 5.5], 16, { up: side }),
    bar('ab', 'a', 'b', [3.5, 9.25], 16),
    bar('bc', 'b', 'c', [3.5, 9.25], 16),
  ],
  held: [
    { node: 'A', freedoms: [1, 3] },
    { node: 'B', freedoms: [1, 3], moved: { freedom: 3, by: -0.75 } },
    { node: 'C', freedoms: [1, 3], moved: { freedom: 1, by: 0.5 } },
  ],
  forces: {},
  uniform: {},
};

const sloped: FrameCaseData = {
  name: 'sloped-gable-frame',
  title: 'gable frame on unequal posts, loads across and along the slopes',
  planar: true,
  nodes: { A: v3(0, 0, 0), a: v3(0, 0, 120), r: v3(84, 0, 162), c: v3(192, 0, 96), C: v3(192, 0, 0) },
  members: [
    bar('Aa', 'A', 'a', [5.5, 5.5], 18, { up: side }),
    bar('ar', 'a', 'r', [3.5, 7.25], 16),
    bar('rc', 'r', 'c', [3.5, 7.25], 18),
    bar('Cc', 'C', 'c', [5.5, 5.5], 16, { up: side }),
  ],
  held: [
    { node: 'A', freedoms: [1, 3] },
    { node: 'C', freedoms: [1, 3] },
  ],
  forces: { r: v3(0, 0, -300) },
  uniform: { Aa: v3(3, 0, 0), ar: v3(1.5, 0, -8), rc: v3(2, 0, -5) },
};

export const FRAME_CASES: readonly FrameCaseData[] = [beam, braced, scissor, portal, settled, sloped];
