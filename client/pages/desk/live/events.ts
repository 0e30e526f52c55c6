import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { DeskCommand } from '../../../../shared/protocol/commands.ts';
import type { Step } from './steps.ts';

/** A part of the live Desk asks for a command to be sent. */
export class CommandEvent extends Event {
  static readonly kind = 'desk-command';
  readonly command: DeskCommand;
  constructor(command: DeskCommand) {
    super(CommandEvent.kind, { bubbles: true, composed: true });
    this.command = command;
  }
}

/** A button of the bottom bar. */
export class StepEvent extends Event {
  static readonly kind = 'desk-step';
  readonly step: Step;
  constructor(step: Step) {
    super(StepEvent.kind, { bubbles: true, composed: true });
    this.step = step;
  }
}

/** What opens beside or over the live Desk. */
export type Panel = 'plan' | 'students' | 'make' | 'change' | 'chart' | 'taps' | 'class';

/** Opens a panel, or closes the one that is open. */
export class PanelEvent extends Event {
  static readonly kind = 'desk-panel';
  readonly panel: Panel | null;
  /** What the maker starts from, where it isn't what is nearest. */
  readonly start: Exercise | null;
  constructor(panel: Panel | null, start: Exercise | null = null) {
    super(PanelEvent.kind, { bubbles: true, composed: true });
    this.panel = panel;
    this.start = start;
  }
}

/** Hides names and answer key, or shows them again. */
export class HideEvent extends Event {
  static readonly kind = 'desk-hide';
  constructor() {
    super(HideEvent.kind, { bubbles: true, composed: true });
  }
}
