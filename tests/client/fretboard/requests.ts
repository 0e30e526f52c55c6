import { standardGuitar } from '../../../shared/theory/fretboard.ts';
import type { WoodRequest } from '../../../client/fretboard/wood-frame.ts';

/** The box that a Stand leaves for the neck at the sizes the look is measured at. */
const base = {
  leftHanded: false,
  strings: standardGuitar.openStrings.length,
  fretCount: standardGuitar.fretCount,
  named: false,
} as const;

export const phone: WoodRequest = { ...base, view: 'upright', width: 358, height: 640 };
export const smallPhone: WoodRequest = { ...base, view: 'upright', width: 296, height: 410 };
export const turnedPhone: WoodRequest = { ...base, view: 'lying', width: 812, height: 318 };
