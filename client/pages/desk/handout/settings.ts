import { browserStore } from '../../../lib/key-store.ts';
import { usualSettings, type PerPage, type SheetSettings } from './sheet.ts';

/** How this teacher likes handouts; kept on the device. */

const entry = 'rootcall.handout';
const store = browserStore(() => localStorage);

/** Every choice, in the order in which it is offered, and what it is called. */
export const choices = {
  kind: { charts: 'Charts', blank: 'Blank charts', quiz: 'Paper quiz' },
  paper: { a4: 'A4', letter: 'Letter' },
  orientation: { portrait: 'Upright', landscape: 'Lying' },
  hands: { right: 'Right-handed', left: 'Left-handed', both: 'Both, the left-handed copy after the other' },
  marks: { degrees: 'Degrees', names: 'Note names', fingers: 'Fingers', none: 'Nothing' },
  view: { auto: 'As it fits', upright: 'Upright, as a chord chart', lying: 'Lying, as tablature' },
  naming: { group: 'As the group', english: 'English', german: 'German', solfege: 'do re mi' },
  blankView: { upright: 'Upright', lying: 'Lying' },
} as const satisfies {
  [Field in keyof SheetSettings]?: Readonly<Record<SheetSettings[Field] & string, string>>;
};

export type ChoiceField = keyof typeof choices;
export const perPages: readonly PerPage[] = [1, 2, 4, 6, 12];
export type SwitchField = 'tab' | 'explained' | 'notes';
const switches: readonly SwitchField[] = ['tab', 'explained', 'notes'];
/** Frets that an empty chart may start from, and may have. */
export const blankLimits = { from: [1, 17], frets: [4, 15] } as const;

/** Reads what was kept; whatever is missing or unreadable is as usual. */
export function settingsIn(stored: string | null): SheetSettings {
  const kept = readObject(stored);
  const chosen = Object.entries(choices).flatMap(([field, of]) => {
    const value = kept[field];
    return typeof value === 'string' && Object.hasOwn(of, value) ? [[field, value]] : [];
  });
  const switched = switches.flatMap((field) =>
    typeof kept[field] === 'boolean' ? [[field, kept[field]]] : [],
  );
  const within = (value: unknown, [least, most]: readonly [number, number], usual: number) =>
    Number.isInteger(value) && Number(value) >= least && Number(value) <= most ? Number(value) : usual;
  return {
    ...usualSettings,
    ...(Object.fromEntries([...chosen, ...switched]) as Partial<SheetSettings>),
    perPage: perPages.find((count) => count === kept['perPage']) ?? usualSettings.perPage,
    blankFrom: within(kept['blankFrom'], blankLimits.from, usualSettings.blankFrom),
    blankFrets: within(kept['blankFrets'], blankLimits.frets, usualSettings.blankFrets),
  };
}

function readObject(stored: string | null): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(stored ?? '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Readonly<Record<string, unknown>>) : {};
  } catch {
    return {};
  }
}

export function loadSettings(): SheetSettings {
  return settingsIn(store.get(entry));
}

export function saveSettings(settings: SheetSettings): void {
  store.set(entry, JSON.stringify(settings));
}
