import type { LegendEntry } from '../components/legend.ts';
import type { NeckNote } from './state.ts';

/** What the marks of a map mean, from the innermost layer out, and those of a chord that may be left out. */
export function layerLegend(notes: readonly NeckNote[]): readonly LegendEntry[] {
  const of = (look: NeckNote['look']) => notes.filter((note) => note.look === look && !note.root);
  const scale = of('scale');
  const hasLayers = of('pentatonic').length > 0 || scale.length > 0;
  const entries: readonly (LegendEntry | false)[] = [
    hasLayers && of('filled').length > 0 && { sign: 'disc', words: 'chord' },
    of('pentatonic').length > 0 && { sign: 'circle', words: 'pentatonic' },
    // Where there is no room for its letters, a dot is drawn.
    scale.length > 0 && { sign: scale.some(({ label }) => label) ? 'digit' : 'dot', words: 'scale' },
    notes.some(({ look, optional }) => look === 'filled' && optional) && {
      sign: 'dashes',
      words: 'may stay silent',
    },
  ];
  return entries.filter((entry) => entry !== false);
}
