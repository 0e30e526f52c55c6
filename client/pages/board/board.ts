import { LitElement, css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { ErrorReply } from '../../../shared/protocol/errors.ts';
import { ConnectionController } from '../../connection/connection-controller.ts';
import { connectBoard } from '../../connection/socket.ts';
import { boardStyles } from './board-styles.ts';
import './code-form.ts';
import type { CodeGivenEvent } from './code-form.ts';
import './picture.ts';
import { codeInPath } from './words.ts';

/** What a student reads says where the code stands: on this very screen. Here it stands at the Desk. */
function sentenceOf({ code, message }: ErrorReply): string {
  return code === 'unknown-code' ? 'No class has this code. Look at the Desk again.' : message;
}

/** The projector's page: `/board` asks for a code, `/board/CODE` shows that class and finds back to it by itself. */
@customElement('rootcall-board')
export class RootcallBoard extends LitElement {
  static override styles = [
    boardStyles,
    css`
      .line {
        bottom: calc(14 * var(--unit));
        color: var(--soft);
        font-size: max(14px, calc(44 * var(--unit)));
        left: var(--margin);
        position: fixed;
        right: var(--margin);
      }
      .opening {
        padding: var(--margin);
      }
    `,
  ];

  @state() private code = codeInPath(location.pathname);
  private readonly live = new ConnectionController<'board:view'>(this);

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('popstate', this.follow);
    this.follow();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('popstate', this.follow);
  }

  override render() {
    const { connection } = this.live;
    if (!connection) return this.form('');
    const view = connection.view('board:view');
    const { absence, refusal, state } = connection;
    // A class that is over may be refused later: its last picture stays until somebody turns it off.
    if (refusal && view?.stage.kind !== 'over') return this.form(sentenceOf(refusal));
    return html`${
        view
          ? html`<board-picture .view=${view}></board-picture>`
          : html`<p class="lead opening">${state === 'lost' ? nothing : 'Opening the class.'}</p>`
      }
      <p class="line" role="status">
        ${
          state === 'lost' && !refusal
            ? (absence?.message ?? 'Out of touch. The Board comes back by itself.')
            : nothing
        }
      </p>`;
  }

  private form(refusal: string) {
    return html`<board-code-form
      .code=${this.code}
      .refusal=${refusal}
      @board-code-given=${this.open}
    ></board-code-form>`;
  }

  private readonly open = ({ code }: CodeGivenEvent): void => {
    if (code !== codeInPath(location.pathname)) history.pushState(null, '', `/board/${code}`);
    this.follow();
  };

  private readonly follow = (): void => {
    this.code = codeInPath(location.pathname);
    this.live.use(this.code === '' ? null : connectBoard(this.code));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-board': RootcallBoard;
  }
}
