import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { chartWordings, checkChart, type MapChart } from '../../../../shared/exercise/chart.ts';
import { mapWalk } from '../../../../shared/exercise/walks.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { scaleNames } from '../../../../shared/theory/tables/scale-names.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../../shared/theory/tables/scales.ts';
import '../../../charts/chart.ts';
import { chartMarks } from '../../../charts/chart-marks.ts';
import '../../../components/legend.ts';
import { layerLegend } from '../../../fretboard/layer-legend.ts';
import { deskStyles } from '../desk-styles.ts';
import { choiceField, type Choice } from '../maker/choice-field.ts';
import { qualityChoices } from '../maker/qualities.ts';
import { rangeField } from '../maker/range-field.ts';
import { foundStyles } from './around-styles.ts';
import { saveMenu, walkButtons } from './card-buttons.ts';
import { instrumentOf } from '../maker/draft.ts';
import { noWays, type Ways } from './events.ts';
import { mapRange, type AroundFields } from './fields.ts';
import { FieldsEvent } from './fields-event.ts';

const scales = Object.keys(scaleTable) as readonly ScaleId[];
const isSmall = (scale: ScaleId) => scaleTable[scale].length < 7;
const choicesOf = (some: readonly ScaleId[]): readonly Choice[] =>
  some.map((scale) => [scale, scaleNames[scale]]);
/** Five notes, or six with a blue one. */
const pentatonics = choicesOf(scales.filter((scale) => isSmall(scale) && scale !== 'whole-tone'));
const others = choicesOf(scales.filter((scale) => !isSmall(scale) || scale === 'whole-tone'));

/** The map of a root: chord inside pentatonic inside scale. */
@customElement('desk-around-map')
export class DeskAroundMap extends LitElement {
  static override styles = [deskStyles, foundStyles];

  @property({ attribute: false }) fields: AroundFields | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) ways: Ways = noWays;

  override render() {
    const { fields } = this;
    if (!fields) return nothing;
    const neck = instrumentOf(fields);
    const { root, chord, pentatonic, scale } = fields;
    const change = (of: Partial<AroundFields>) => this.dispatchEvent(new FieldsEvent(of));
    const walk = mapWalk({ instrument: neck, root }, { chord, pentatonic, scale }, mapRange(fields));
    const full = walk.at(-1);
    return html`<div class="layers">
        ${choiceField('Chord', qualityChoices, chord, (id) => change({ chord: id as ChordQuality }))}
        ${choiceField('Pentatonic round it', { choices: pentatonics }, pentatonic, (id) =>
          change({ pentatonic: id as ScaleId }),
        )}
        ${choiceField('Scale round both', { choices: others }, scale, (id) => change({ scale: id as ScaleId }))}
        ${rangeField(mapRange(fields), neck.fretCount, (range) => change({ range }))}
      </div>
      ${full ? this.preview(full, walk) : nothing}`;
  }

  private preview(map: MapChart, walk: readonly MapChart[]) {
    const checked = checkChart(map);
    if (!checked.ok) return html`<p class="problem" role="status">${checked.error}</p>`;
    const { naming } = this;
    const notes = chartMarks(map, { marks: 'degrees', naming });
    const { title, detail } = chartWordings(map)[naming];
    const { show, takeMaps, takeWords, keyHidden } = this.ways;
    return html`<div class="map">
      <div class="title">
        <div role="status">
          <h3>${title}</h3>
          <p class="soft small">${detail}</p>
        </div>
        <div class="buttons">
          ${walkButtons({
            shown: 'it layer by layer',
            show: show && (() => show(walk)),
            take: takeMaps && (() => takeMaps([map], title)),
            taken: title,
            takeWords,
            filled: true,
          })}
          ${keyHidden ? nothing : saveMenu([map], title, naming)}
        </div>
      </div>
      ${
        keyHidden
          ? html`<p class="soft small">The answer key is hidden.</p>`
          : html`<div class="scroll" tabindex="0" role="group" aria-label="The map">
                <rootcall-chart
                  view="lying"
                  .chart=${map}
                  .naming=${naming}
                  .label=${`Map: ${title}`}
                ></rootcall-chart>
              </div>
              <rootcall-legend
                .entries=${[{ sign: 'lozenge', words: 'root' }, ...layerLegend(notes)]}
              ></rootcall-legend>`
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-around-map': DeskAroundMap;
  }
}
