import type { Electrical } from '../model.js';
import type { WrittenElectrical } from '../schema/electrical.js';

export const completeElectrical = (w: WrittenElectrical): Electrical => ({
  devices: w.devices.map((d, i) => ({
    ...d,
    circuit: d.circuit ?? '',
    switchedBy: d.switchedBy ?? '',
    note: d.note ?? '',
    path: `/cover/electrical/devices/${i}`,
  })),
  path: '/cover/electrical',
});
