import type { LegendEntry } from '../components/legend.ts';
import type { NeckNote } from './state.ts';

/** What a map's marks mean, from the innermost layer out; nothing for a chart without layers. */
export function layerLegend(notes: readonly NeckNote[]): readonly LegendEntry[] {
  const has = (wanted: NeckNote['look']) => notes.some((note) => note.look === wanted && !note.root);
  if (!has('pentatonic') && !has('scale')) return [];
  const entries: readonly (LegendEntry | false)[] = [
    has('filled') && { sign: 'disc', words: 'chord' },
    has('pentatonic') && { sign: 'circle', words: 'pentatonic' },
    has('scale') && { sign: 'digit', words: 'scale' },
  ];
  return entries.filter((entry) => entry !== false);
}
