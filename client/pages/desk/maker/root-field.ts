import type { TemplateResult } from 'lit';
import { formatName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { formatNoteName, parseNoteName, type NoteName } from '../../../../shared/theory/pitch.ts';
import { choiceField, type Choice } from './choice-field.ts';
import { usualRoots } from './words.ts';

/** Notes to choose from in the teacher's naming, both spellings; another one where it is chosen already. */
export function noteChoices(naming: NoteNaming, chosen: NoteName | null): readonly Choice[] {
  const text = chosen && formatNoteName(chosen);
  const usual = !chosen || usualRoots.some((root) => formatNoteName(root) === text);
  return [...usualRoots, ...(usual ? [] : [chosen])].map((note) => [
    formatNoteName(note),
    formatName(note, naming),
  ]);
}

export function rootField(
  label: string,
  root: NoteName,
  naming: NoteNaming,
  choose: (root: NoteName) => void,
): TemplateResult {
  return choiceField(label, { choices: noteChoices(naming, root) }, formatNoteName(root), (text) => {
    const note = parseNoteName(text);
    if (note) choose(note);
  });
}
