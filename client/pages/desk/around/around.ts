import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Chart, MapChart } from '../../../../shared/exercise/chart.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Fret } from '../../../../shared/theory/fretboard.ts';
import { standardGuitar } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { ScaleId } from '../../../../shared/theory/tables/scales.ts';
import { deskStyles } from '../desk-styles.ts';
import { AskEvent } from '../five/events.ts';
import { choiceField, segments } from '../maker/choice-field.ts';
import { firstDraft, instrumentOf, type Draft } from '../maker/draft.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import { qualityChoices, scaleChoices } from '../maker/qualities.ts';
import { rootField } from '../maker/root-field.ts';
import { stringField } from '../maker/string-field.ts';
import { aroundStyles } from './around-styles.ts';
import { ShowEvent, type Ways } from './events.ts';
import type { FieldsEvent } from './fields-event.ts';
import {
  changed,
  firstFields,
  rootPlaces,
  whatWords,
  wishOf,
  type AroundFields,
  type What,
} from './fields.ts';
import './map.ts';
import './progression.ts';
import './proposals.ts';

const takeWords = {
  plan: { button: 'Into the plan', taken: 'In the plan', refused: 'Not in the plan yet' },
  sheet: { button: 'Onto the sheet', taken: 'On the sheet', refused: 'Not on the sheet' },
} as const;

/** Finds from a root what can be played round it: shapes, positions, arpeggios, its map, and chords in a row. */
@customElement('desk-around')
export class DeskAround extends LitElement {
  static override styles = [deskStyles, circleStyles, segmentStyles, aroundStyles];

  /** What the root is taken from. */
  @property({ attribute: false }) from: Draft = firstDraft(standardGuitar.id);
  @property({ attribute: false }) naming: NoteNaming = 'english';
  /** Takes exercises into the plan, and tells whether they are in it; null where there is none. */
  @property({ attribute: false }) take: ((exercises: readonly Exercise[]) => Promise<boolean>) | null = null;
  /** Likewise for maps, where they can be taken. */
  @property({ attribute: false }) takeMaps: ((maps: readonly MapChart[]) => Promise<boolean>) | null = null;
  /** What it is taken into. */
  @property() into: 'plan' | 'sheet' = 'plan';
  /** Whether it can be asked and shown at once. */
  @property({ type: Boolean }) asking = false;
  @property({ type: Boolean }) keyHidden = false;
  @state() private fields: AroundFields | null = null;
  @state() private said = '';

  protected override willUpdate() {
    this.fields ??= firstFields(this.from);
  }

  override render() {
    const { fields } = this;
    if (!fields) return nothing;
    // A map is shown, never asked: it can't stand in a plan.
    const hasMaps = this.asking || this.takeMaps !== null;
    const whats = Object.entries(whatWords).filter(([what]) => hasMaps || what !== 'map');
    return html`<div class="fields">
        <div class="what">
          ${segments('What to find', 'what', whats, fields.what, (what) => this.change({ what: what as What }))}
        </div>
        ${fields.what === 'progression' ? nothing : this.root(fields)} ${this.found(fields)}
      </div>
      <div class="row end">
        <p class="soft" role="status">${this.said}</p>
        <slot></slot>
      </div>`;
  }

  private root(fields: AroundFields) {
    const places = rootPlaces(fields);
    return html`<div class="front">
      <div class=${fields.what === 'map' ? 'pair' : 'pair named'}>
        ${rootField('Root', fields.root, this.naming, (root) => this.change({ root }))} ${this.kind(fields)}
      </div>
      ${stringField('Root on string', instrumentOf(fields), [fields.rootString], 'one', (rootString) =>
        this.change({ rootString }),
      )}
      <div class="frets">
        <span class="label" aria-hidden="true">Root at fret</span>
        ${segments(
          'Root at fret',
          'fret',
          places.map(({ fret }) => [String(fret), fret === 0 ? 'open' : String(fret)]),
          String(fields.fret),
          (fret) => this.change({ fret: Number(fret) as Fret }),
        )}
      </div>
    </div>`;
  }

  private kind({ what, quality, scaleAlone }: AroundFields) {
    const scales = {
      ...scaleChoices,
      groups: scaleChoices.groups.filter(({ words }) => words !== 'Arpeggios'),
    };
    switch (what) {
      case 'chord':
      case 'arpeggio':
        return choiceField(whatWords.chord, qualityChoices, quality, (id) =>
          this.change({ quality: id as ChordQuality }),
        );
      case 'scale':
        return choiceField(whatWords.scale, scales, scaleAlone, (id) =>
          this.change({ scaleAlone: id as ScaleId }),
        );
      case 'map':
      case 'progression':
        return nothing;
    }
  }

  private found(fields: AroundFields) {
    const { naming, ways } = this;
    switch (fields.what) {
      case 'map':
        return html`<desk-around-map
          .fields=${fields}
          .naming=${naming}
          .ways=${ways}
          @desk-fields=${({ change }: FieldsEvent) => this.change(change)}
        ></desk-around-map>`;
      case 'progression':
        return html`<desk-around-progression
          .fields=${fields}
          .naming=${naming}
          .ways=${ways}
        ></desk-around-progression>`;
      default:
        return html`<desk-around-proposals
          .fields=${fields}
          .wish=${wishOf(fields)}
          .naming=${naming}
          .ways=${ways}
        ></desk-around-proposals>`;
    }
  }

  private get ways(): Ways {
    return {
      ask: this.asking ? (exercise) => this.dispatchEvent(new AskEvent(exercise)) : null,
      show: this.asking ? (charts: readonly Chart[]) => this.dispatchEvent(new ShowEvent(charts)) : null,
      take: this.take && ((exercises, what) => void this.taken(this.take?.(exercises), what)),
      takeMaps: this.takeMaps && ((maps, what) => void this.taken(this.takeMaps?.(maps), what)),
      takeWords: takeWords[this.into].button,
      keyHidden: this.keyHidden,
    };
  }

  /** Said once the plan has it, or won't. */
  private async taken(taking: Promise<boolean> | undefined, what: string) {
    this.said = '';
    const words = takeWords[this.into];
    this.said = `${(await taking) ? words.taken : words.refused}: ${what}.`;
  }

  private change(change: Partial<AroundFields>) {
    if (this.fields) this.fields = changed(this.fields, change);
    this.said = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-around': DeskAround;
  }
}
