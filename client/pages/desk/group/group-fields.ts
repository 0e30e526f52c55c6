import { html, type TemplateResult } from 'lit';
import { standardGuitar } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { GroupSettings } from '../api.ts';
import '../instrument/instrument-picker.ts';
import { fieldText } from '../refusal.ts';
import { dateField, languageWords, namingWords, timeOfField } from './words.ts';

const yearInDays = 365;
const day = 24 * 60 * 60 * 1000;

/** What a new group starts from: records are kept for a year unless the teacher says otherwise. */
export function newGroup(now: number): GroupSettings {
  return {
    name: '',
    school: '',
    instrument: standardGuitar.id,
    naming: 'english',
    language: 'en',
    purgeAt: now + yearInDays * day,
  };
}

/** The fields of a group's settings, for a form around them; open strings are written in the reader's naming. */
export function groupFields(group: GroupSettings, naming: NoteNaming): TemplateResult {
  return html`
    <label>Group <input name="name" required maxlength="60" .value=${group.name} /></label>
    <label>School <input name="school" maxlength="80" .value=${group.school} /></label>
    <desk-instrument-picker
      name="instrument"
      .value=${group.instrument}
      .naming=${naming}
    ></desk-instrument-picker>
    <label
      >Note names
      <select name="naming">
        ${Object.entries(namingWords).map(
          ([naming, words]) =>
            html`<option value=${naming} ?selected=${naming === group.naming}>${words}</option>`,
        )}
      </select></label
    >
    <label
      >Language of the students' screens
      <select name="language">
        ${Object.entries(languageWords).map(
          ([language, words]) =>
            html`<option value=${language} ?selected=${language === group.language}>${words}</option>`,
        )}
      </select></label
    >
    <label
      >Keep the records until
      <input
        name="purge"
        type="date"
        required
        aria-describedby="purge-hint"
        .value=${group.purgeAt === null ? '' : dateField(group.purgeAt)}
      />
      <span class="soft small" id="purge-hint"
        >On that day names, answers and classes are deleted.</span
      ></label
    >
  `;
}

export function settingsIn(form: HTMLFormElement): GroupSettings {
  return {
    name: fieldText(form, 'name'),
    school: fieldText(form, 'school'),
    instrument: fieldText(form, 'instrument'),
    naming: fieldText(form, 'naming') as NoteNaming,
    language: fieldText(form, 'language'),
    purgeAt: timeOfField(fieldText(form, 'purge')),
  };
}
