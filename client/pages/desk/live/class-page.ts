import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import type { DeskCommand } from '../../../../shared/protocol/commands.ts';
import { deskStyles } from '../desk-styles.ts';
import './asking.ts';
import './bar.ts';
import './class-panel.ts';
import type { KeySettingsEvent } from './class-panel.ts';
import './drawer.ts';
import { type CommandEvent, type Panel, type PanelEvent, type StepEvent } from './events.ts';
import './header.ts';
import { keyActionOf, pedalPause, pressOf, type KeyAction } from './keys.ts';
import './make-dialog.ts';
import './plan-column.ts';
import { loadPreferences, savePreferences, type Preferences } from './preferences.ts';
import './rest-centre.ts';
import './round-centre.ts';
import './shown.ts';
import { actionOf, nextStep, stepBack, type Step, type StepAction } from './steps.ts';
import './summary.ts';
import { classPageStyles } from './class-page-styles.ts';

/** The live Desk: owns the connection and what is open beside it; its parts get the view and say what they want. */
@customElement('desk-class')
export class DeskClass extends LitElement {
  static override styles = [deskStyles, classPageStyles];

  @property() classId = '';
