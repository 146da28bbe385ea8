import type { House, HouseRoof, HouseWall, WallSideLoad } from '../model.js';
import type { WrittenHouse } from '../schema/house.js';
import { pointer } from '../text/node.js';
import { completeHeader } from './attachment.js';
import type { Notebook } from './notebook.js';

const VERIFY = {
  value: false,
  shown: 'not verified',
};

/** What the wall may be given, or a question for each part of it that is not known. */
function completeSideLoad(
  wall: WrittenHouse['walls'][number],
  at: string,
  note: Notebook,
): { readonly sideLoad?: WallSideLoad } {
  if (!wall.sideLoad) return {};
  const path = `${at}/sideLoad`;
  const ask = (way: 'along' | 'square', words: string) =>
    note.office(wall.sideLoad![way], `${path}/${way}`, {
      value: 0,
      shown: 'none',
      question: `How much side load ${words} may the cover hand to the ${wall.name} wall of the house?`,
    });
  return { sideLoad: { along: ask('along', 'along it'), square: ask('square', 'square to it'), path } };
}

export function completeHouse(w: WrittenHouse, note: Notebook): House {
  const verified = new Map(
    Object.entries(w.builds).map(([name, b]) => [
      name,
      note.office(b.verified, pointer(['house', 'builds', name, 'verified']), {
        ...VERIFY,
        question: `Has the framing of the "${name}" wall been seen (studs, band, sheathing)?`,
      }),
    ]),
  );
  const walls = w.walls.map((wall, i): HouseWall => {
    const b = w.builds[wall.build]!;
    return {
      name: wall.name,
      start: wall.start,
      end: w.walls[(i + 1) % w.walls.length]!.start,
      plate: wall.plate,
      stories: w.stories,
      build: {
        name: wall.build,
        studSize: b.studs,
        studSpacing: b.spacing,
        cladding: b.cladding,
        claddingThickness: b.claddingThickness,
        sheathing: b.sheathing,
        verified: verified.get(wall.build)!,
      },
      ...completeSideLoad(wall, `/house/walls/${i}`, note),
      path: `/house/walls/${i}`,
    };
  });
  return {
    walls,
    openings: w.openings.map(({ header, ...o }, i) => ({
      ...o,
      wall: walls.findIndex((wall) => wall.name === o.wall),
      ...completeHeader(header, o.mark, `/house/openings/${i}`, note),
      path: `/house/openings/${i}`,
    })),
    roofs: w.roofs.map(({ ridge, fall, ...r }, i): HouseRoof => {
      const across = fall?.endsWith('x') ? 'y' : 'x';
      return { ...r, ridge: ridge ?? across, ...(fall ? { fall } : {}), path: `/house/roofs/${i}` };
    }),
    stories: w.stories,
    rooms: (w.rooms ?? []).map((r, i) => ({ ...r, path: `/house/rooms/${i}` })),
    equipment: (w.equipment ?? []).map((e, i) => ({
      ...e,
      wall: walls.findIndex((wall) => wall.name === e.wall),
      clearance: note.office(e.clearance, `/house/equipment/${i}/clearance`, {
        value: 36,
        shown: '3 ft',
        question: `How far must new work keep from the ${e.label} on the ${e.wall} wall?`,
      }),
      path: `/house/equipment/${i}`,
    })),
    built: w.built,
    ...(w.footing === undefined
      ? {}
      : {
          footing: {
            bottom: note.office(w.footing.bottom, '/house/footing/bottom', {
              value: 12,
              shown: '12 in',
              question: 'How deep below the ground is the underside of the house footing?',
            }),
            projection: note.office(w.footing.projection, '/house/footing/projection', {
              value: 6,
              shown: '6 in',
              question: 'How far does the house footing stand out past the wall?',
            }),
          },
        }),
  };
}
