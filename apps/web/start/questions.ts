/**
 * The questions in the order a person measures. Each names the value of the file it fills; what the value means stands in
 * the published schema, where to find it stands here. “I don't know” is always an answer.
 */
export interface Ask {
  readonly path: string;
  readonly label: string;
  /** Where to find the answer. */
  readonly where?: string;
  /** Sheet on which the answer shows. */
  readonly sheet?: string;
}

export interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly sheet: string;
  readonly asks: readonly Ask[];
}

const office = (path: string, label: string, where: string): Ask => ({ path: `/basis${path}`, label, where });

export const CHAPTERS: readonly Chapter[] = [
  {
    id: 'job',
    title: 'Name it',
    about: 'Printed in the corner of every sheet.',
    sheet: 'G-001',
    asks: [
      { path: '/job/title', label: 'What the job is called' },
      { path: '/job/address', label: 'Address', where: 'As on the property tax bill.' },
      { path: '/job/owner', label: 'Owner', where: 'As on the deed.' },
      { path: '/job/parcel', label: 'Parcel number', where: 'On the property tax bill, or the county’s map page.' },
      { path: '/job/date', label: 'Date on the sheets' },
      { path: '/job/units', label: 'Feet and inches, or metric' },
      { path: '/job/sheetSize', label: 'Sheet size', where: 'Ask the office which sizes it takes.' },
    ],
  },
  {
    id: 'house',
    title: 'House wall and openings',
    about: 'Stand inside at the patio wall, look out, and measure from left to right.',
    sheet: 'S-101',
    asks: [
      {
        path: '/house/walls',
        label: 'Walls',
        where: 'Corners of the house, clockwise as seen from above. A tape along the outside of the siding will do.',
      },
      {
        path: '/house/openings',
        label: 'Doors and windows',
        where:
          'From the left end of the wall to the near edge of the opening; width; height of sill and head above the floor.',
      },
      { path: '/house/stories', label: 'Storeys' },
      { path: '/house/builds', label: 'What the wall is made of', where: 'See “Finding studs and band” below.' },
      { path: '/house/roofs', label: 'House roof', where: 'Pitch: hold a level out 12 in and measure the rise.' },
    ],
  },
  {
    id: 'lot',
    title: 'Lot',
    about: 'The office wants the boundary as the plat or survey states it.',
    sheet: 'C-101',
    asks: [
      {
        path: '/lot/courses',
        label: 'Lot lines',
        where: 'On the plat, the survey or the deed: a bearing and a length for each line. Walk round from any corner.',
      },
      {
        path: '/lot/origin',
        label: 'Where the patio wall stands',
        where: 'From the first corner to a point of the patio wall, east and north; scale it from the survey.',
      },
      {
        path: '/lot/outward',
        label: 'Straight out from the patio wall',
        where: 'Bearing; a phone’s compass is near enough to tell the lines apart, the survey decides.',
      },
      { path: '/lot/easements', label: 'Easements', where: 'On the plat or in the title report.' },
      { path: '/lot/buildings', label: 'Sheds and garages' },
      {
        path: '/lot/items',
        label: 'Meters, septic, trees, wires',
        where: 'Anything a roof or a footing must keep away from.',
      },
      {
        path: '/patio/slabs',
        label: 'Slab',
        where: 'Its outline, thickness at an edge, and how far it lies below the floor.',
      },
      { path: '/patio/grade', label: 'Ground beside the house' },
    ],
  },
  {
    id: 'office',
    title: 'What the office told you',
    about:
      'One visit or call answers these. Most counties print them on a sheet of design criteria. Leave open what you do not know.',
    sheet: 'G-001',
    asks: [
      office('/wind/speed', 'Wind speed', 'Design criteria sheet.'),
      office('/wind/exposure', 'Wind exposure', 'B among houses and trees, C open country, D along open water.'),
      office('/wind/topographic', 'Hill or ridge factor', '1 unless the house is on or beside a hill, ridge or bluff.'),
      office('/snow/ground', 'Ground snow load', 'Design criteria sheet; 0 psf where there is none.'),
      office('/snow/exposure', 'Snow exposure', 'Fully swept by wind, partially, or sheltered.'),
      office('/roofLive/minimum', 'Least roof live load', 'Mostly 20 psf.'),
      office('/roofLive/patioAppendix', 'Patio-cover appendix adopted', 'Ask the counter; it must be adopted by name.'),
      office('/seismic/category', 'Seismic design category', 'Design criteria sheet.'),
      office('/frost', 'Frost depth', 'Design criteria sheet; how deep a footing must reach.'),
      office('/soil/bearing', 'Soil bearing', 'What may be used without a soils report, often 1500 psf.'),
      office('/soil/lateral', 'Lateral soil bearing', 'Often 100 psf/ft without a report.'),
      office('/criteria', 'Other criteria', 'Termite, weathering and so on, printed as given.'),
    ],
  },
  {
    id: 'want',
    title: 'What you want',
    about: 'Drag posts, beams and roof edges on the plans, or write the numbers here. The checks follow.',
    sheet: 'S-102',
    asks: [
      { path: '/cover/roofs', label: 'Roofs', where: 'Pitch, height of the bearing, overhangs, framing and covering.' },
      { path: '/cover/beams', label: 'Beams and posts' },
      { path: '/cover/lateral', label: 'What keeps it from swaying' },
      { path: '/choices/sections', label: 'Lumber', where: 'Size, species and grade as stamped or as you will order.' },
      { path: '/choices/footings', label: 'Footings' },
      {
        path: '/choices/joints',
        label: 'Connectors',
        where: 'Copy the allowable loads from the maker’s published table; the schedule says what each joint needs.',
      },
      {
        path: '/cover/deferred',
        label: 'Handed in later',
        where: 'Many offices take the sealed truss sheets later; ask.',
      },
    ],
  },
];
