import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Heard, HeardTone, PlayedTap, Playing } from '../../../shared/exercise/heard.ts';
import { heardWords } from '../../../shared/exercise/heard-words.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { pitchClass, pitchClassOf } from '../../../shared/theory/pitch.ts';
import type { Key } from '../../../shared/theory/spelling.ts';
import type { MicrophoneState } from '../../listening/events.ts';
import type { MidiState } from '../../midi/midi-events.ts';
import { privacyWords } from '../../components/sound/words.ts';
import { nextTap } from './heard-answer.ts';
import type { ChosenWay, MayPlay } from './ways.ts';

/** Why the microphone is asked for, and what of it travels. */
export const whyListen = `The microphone hears what you play. ${privacyWords}`;

/** A microphone that doesn't listen, and the way on; '' where there is nothing to say. */
export function microphoneWords(state: MicrophoneState, hasHeard: boolean): string {
  switch (state) {
    case 'off':
    case 'listening':
      return '';
    case 'asking':
      return 'Waiting for the microphone. If the browser asks, allow it.';
    case 'refused':
      return 'The microphone is refused here. Tap, or allow it in the browser.';
    case 'missing':
      return 'No microphone is found. Tap, or plug one in.';
    case 'busy':
      return 'Something else holds the microphone. Tap, or close the other program.';
    case 'insecure':
      return 'No microphone without HTTPS: answer by tapping. Your teacher can turn HTTPS on.';
    case 'unsupported':
      return 'This browser can’t listen. Answer by tapping.';
    case 'ended':
      return hasHeard
        ? 'The microphone is gone. What was heard stays. Tap, or Listen again.'
        : 'The microphone is gone. Tap, or Listen again.';
  }
}

/** How notes are called: in the light of the task, in the reader's naming. */
export interface Names {
  readonly key: Key;
  readonly naming: NoteNaming;
}

/** What was heard, read aloud: "Heard: A, C sharp, E." */
export function heardSaid(heard: Heard, { key, naming }: Names): string {
  return `${inSpeech(heardWords(heard, naming, key).replace('… ', ''))}.`;
}

export function hintLine(hint: readonly HeardTone[], { key, naming }: Names): string {
  return `${heardWords({ kind: 'chord', tones: hint }, naming, key)} …`;
}

/** Signs that a voice would skip. */
function inSpeech(text: string): string {
  return text
    .replaceAll('𝄫', ' double flat')
    .replaceAll('𝄪', ' double sharp')
    .replaceAll('♭', ' flat')
    .replaceAll('♯', ' sharp');
}

/** Whether the line that was heard starts on the root that the task names. */
export function startsOnRoot({ heard }: Answer, { key }: Pick<Names, 'key'>): boolean {
  const first = heard?.kind === 'line' ? heard.pitches[0]?.pitch : undefined;
  return first !== undefined && pitchClass(first) === pitchClassOf(key.root);
}

/** Asks for the tap that what was played still needs. */
export function tapAsked(tap: PlayedTap, answer: Answer, names: Pick<Names, 'key'>): string {
  if (tap === 'lowest') return 'Tap your lowest note.';
  return startsOnRoot(answer, names)
    ? 'Which string did you start on? Tap your root.'
    : 'Tap the root that was asked for.';
}

export function midiWords(state: MidiState): string {
  switch (state) {
    case 'off':
    case 'connected':
      return '';
    case 'asking':
      return 'The browser asks for MIDI.';
    case 'none':
      return 'No MIDI instrument yet: plug one in. Tapping goes on.';
    case 'refused':
      return 'MIDI is refused here. Tap, or allow it in the browser.';
    case 'insecure':
      return 'No MIDI without HTTPS: answer by tapping. Your teacher can turn HTTPS on.';
    case 'unsupported':
      return 'This browser has no MIDI. Answer by tapping.';
  }
}

/** All that the panel's one line depends on. */
export interface Panel {
  /** What is played counts now. */
  readonly open: boolean;
  readonly way: ChosenWay;
  readonly may: MayPlay;
  readonly listens: boolean;
  readonly microphone: MicrophoneState;
  readonly midi: MidiState;
  readonly tooLoud: boolean;
  readonly answer: Answer;
  readonly hint: readonly HeardTone[];
  readonly isDoubtful: boolean;
  readonly playing: Playing;
  readonly names: Names;
}

/** What the panel says: what hinders, else what was heard and is still to do, else whose turn it is. */
export function panelWords(panel: Panel): string {
  const { way, answer, names } = panel;
  const heard = answer.heard ? `${heardWords(answer.heard, names.naming, names.key)}.` : '';
  const turn = turnWords(panel);
  if (way === 'tap') {
    if (heard !== '') return `${heard}${panel.open ? ' A tap replaces it.' : ''}`;
    return turn;
  }
  const hindered = hindrance(panel);
  if (hindered !== '') return hindered;
  if (panel.hint.length > 0) return hintLine(panel.hint, names);
  if (heard !== '') return `${heard} ${afterwards(panel)}`.trim();
  if (!panel.open || answer.places.length > 0) return '';
  // By wire one may play in another's turn.
  if (way === 'midi') return panel.may === 'turn' ? `${turn} Play.` : 'Play.';
  // Not before it does: what is played too early is lost.
  const listening = panel.microphone === 'listening' ? 'Listening.' : '';
  return `${turn} ${panel.listens ? listening : 'Turn Listen on, and play.'}`.trim();
}

/** Whose turn it is, where playing goes by turns. */
export function turnWords({ open, may }: Panel): string {
  if (!open) return '';
  if (may === 'wait') return 'It is somebody else’s turn to play. Tapping goes on.';
  return may === 'turn' ? 'Your turn to play.' : '';
}

/** What keeps an instrument from being heard; '' where nothing does. */
export function hindrance({ way, microphone, midi, tooLoud, answer, hint }: Panel): string {
  if (way === 'midi') return midiWords(midi);
  if (way !== 'play') return '';
  return (
    microphoneWords(microphone, answer.heard !== undefined) ||
    // Where something is heard all the same, that is told.
    (tooLoud && !answer.heard && hint.length === 0 ? 'This room is too loud: answer by tapping.' : '')
  );
}

/** What is still to do about what was heard. */
export function afterwards({ open, answer, playing, isDoubtful, names }: Panel): string {
  if (!open) return '';
  const tap = nextTap(answer, playing);
  if (isDoubtful)
    return `Not all of it was clear: play it once more, or ${tap ? `keep it and tap your ${tap === 'root' ? 'root' : 'lowest note'}` : 'keep it'}.`;
  return tap ? tapAsked(tap, answer, names) : '';
}
