/** Notes on the framing plan for parts that need a word on how they are put together: rakes on outlookers, hips with jacks. */
import type { Member, Structure } from '../../structure/model.js';
import type { SheetContext } from './contract.js';
import { overlayNotes } from './tie-in-parts.js';

const marksOf = (structure: Structure, pick: (m: Member) => boolean): string =>
  [...new Set(structure.members.filter(pick).map((m) => m.mark))].join(', ');

const jointMarks = (structure: Structure, kind: string): string =>
  [...new Set(structure.joints.filter((j) => j.kind === kind).map((j) => j.mark))].join(', ');

/** One note a roof with outlookers: what runs over what, and which joints hold it. */
function rakeNotes(structure: Structure, len: SheetContext['len']): string[] {
  return structure.roofs.flatMap((roof) => {
    const look = structure.members.find((m) => m.rake && m.roof === roof.mark);
    if (!look?.rake) return [];
    const barge = marksOf(structure, (m) => m.role === 'barge' && m.roof === roof.mark);
    const { lay, over, back } = look.rake;
    const thick = lay === 'flat' ? look.section.b : look.section.d;
    return [
      `Rakes of ${roof.mark}: ${look.mark} ${look.section.label}, ${lay === 'flat' ? 'flat' : 'on edge'}, ${len(over)} out over the end frame and ${len(back)} back to the face of the next frame, upper sides in the plane of the framing. The end frame’s top is ${len(thick)} lower; no notches in it. ${barge} is nailed to the end of each. Loads at both ends of ${look.mark}: ${jointMarks(structure, 'outlooker-to-frame')}; the inner end is lifted by load on the overhang.`,
    ];
  });
}

function hipNotes(structure: Structure): string[] {
  const hips = structure.members.filter((m) => m.role === 'hip');
  if (hips.length === 0) return [];
  const jacks = new Set(structure.joints.filter((j) => j.kind === 'jack-to-hip').map((j) => j.ties[0]!.part));
  return [
    `Hips ${marksOf(structure, (m) => m.role === 'hip')} run from the corner posts to the ends of the ridge beam; jacks ${marksOf(structure, (m) => jacks.has(m.id))} are cut in pairs, left and right, and meet on the hip opposite each other. Upper edges of hips stand below the line where the slopes meet, so that sheathing lies flat on them.`,
    'The ridge beam carries the upper ends of hips and rafters: it is no board and its posts stay.',
  ];
}

export const framingNotes = (structure: Structure, len: SheetContext['len']): string[] => [
  ...rakeNotes(structure, len),
  ...hipNotes(structure),
  ...overlayNotes(structure),
];
