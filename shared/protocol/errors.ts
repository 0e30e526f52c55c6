/** Every refusal a person can meet, with the sentence they read. */
export const errorSentences = {
  'not-signed-in': 'Sign in at the Desk first.',
  'sign-in-refused': 'Name and passphrase do not fit together.',
  'set-up-link-spent':
    'This set-up link was used already, or is too old. Start the server again for a new one.',
  'name-taken': 'This name is taken. Choose another.',
  'too-many-tries': 'Too many tries. Wait a minute, then try again.',
  'too-fast': 'That was too much at once. Wait a moment, then try again.',
  'server-busy': 'The server is busy. This page tries again by itself.',
  'server-stopping': 'The server is being restarted. This page comes back by itself.',
  'open-elsewhere': 'This place is open on three newer screens. Close one of them, then reload this page.',
  'boards-full': 'Too many Boards show this class. Close one; this page then comes in by itself.',
  malformed: 'This could not be read. Reload the page and try again.',
  'too-long': 'This is too long.',
  'not-found': 'This does not exist any more.',
  'not-allowed': 'This belongs to somebody else.',
  'unknown-code': 'No class has this code. Look at the board again.',
  'class-closed': 'This class is over.',
  'class-locked': 'This class is locked. Ask your teacher to let you in.',
  'name-missing': 'Write your name or your seat number.',
  'seat-unknown': 'This phone has no place in the class. Give the code and your name again.',
  'not-admitted': 'Your teacher has not let you in yet.',
  'already-in': 'You are in already.',
  'no-round': 'Nothing is asked at the moment.',
  'round-unknown': 'This round is not part of the class.',
  'round-voided': 'This round was taken back.',
  'round-open': 'A round is open. Hold it or void it first.',
  'round-held': 'This round is held already.',
  'round-not-held': 'Hold the round before the reveal.',
  'round-revealed': 'This round is revealed already.',
  'nothing-to-undo': 'There is nothing to undo.',
  'off-the-neck': 'That place is not on this neck.',
  'places-not-asked': 'A name is asked for here, not places on the neck.',
  'name-not-asked': 'Places on the neck are asked for here, not a name.',
  'other-name-asked':
    'A note and how far it lies from the root are two questions; the other one is asked here.',
  'root-not-asked': 'No root is to be marked here.',
  'root-not-placed': 'The root is marked on a place that is not part of the answer.',
  'finger-not-asked': 'No finger is asked for here.',
  'played-otherwise': 'This can’t be answered by what was played.',
  'tapped-too-much': 'More places were tapped than are asked for what was played.',
  'instrument-refused': 'This instrument is not known here.',
  'exercise-refused': 'This exercise does not say clearly what is right.',
  'student-unknown': 'This student is not on the register.',
  'no-turns': 'In this class playing doesn’t go by turns. Choose it under Class.',
  'plan-ended': 'The plan ends here.',
  'plan-changed': 'Another Desk changed this plan meanwhile.',
  'level-unknown': 'The exercise is not asked at this level.',
  'walk-ended': 'There is no such chart in what is shown.',
  'store-failed': 'The server could not save this. It is kept here and sent again.',
  'server-failed': 'Something went wrong on the server. Try again.',
  'page-too-old': 'This page is older than the server. It reloads now.',
} as const;

export type ErrorCode = keyof typeof errorSentences;

/** What travels when something is refused; `message` may say more than the code's own sentence. */
export interface ErrorReply {
  readonly code: ErrorCode;
  readonly message: string;
}

/** `errorReply('class-closed').message` is "This class is over." */
export function errorReply(code: ErrorCode, message: string = errorSentences[code]): ErrorReply {
  return { code, message };
}
