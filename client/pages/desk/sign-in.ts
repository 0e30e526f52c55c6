import { LitElement, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { api } from './api.ts';
import { deskStyles, pageStyles } from './desk-styles.ts';
import { fieldText, formOf, refusalLine } from './refusal.ts';

/** A teacher has signed in, or made the account that signs in. */
export class SignedInEvent extends Event {
  static readonly kind = 'desk-signed-in';
  constructor() {
    super(SignedInEvent.kind, { bubbles: true, composed: true });
  }
}

@customElement('desk-sign-in')
export class DeskSignIn extends LitElement {
  static override styles = [deskStyles, pageStyles];

  @state() private refusal = '';
  @state() private busy = false;

  override render() {
    return html`<main class="slim">
      <h1>Sign in at the Desk</h1>
      <form class="sheet stack" @submit=${this.submit}>
        <label>Name <input name="name" autocomplete="username" required maxlength="60" /></label>
        <label
          >Passphrase
          <input name="passphrase" type="password" autocomplete="current-password" required maxlength="200"
        /></label>
        ${refusalLine(this.refusal)}
        <button class="primary" aria-disabled=${this.busy}>Sign in</button>
      </form>
      <p class="soft small">
        A new teacher gets a link from a colleague who is signed in. Whoever runs the server can set a new
        passphrase with <code class="nowrap">npm run passphrase</code>.
      </p>
    </main>`;
  }

  private async submit(event: SubmitEvent) {
    const form = formOf(event);
    if (!form || this.busy) return;
    this.busy = true;
    const reply = await api.signIn({
      name: fieldText(form, 'name'),
      passphrase: fieldText(form, 'passphrase'),
    });
    this.busy = false;
    this.refusal = reply.ok ? '' : reply.error.message;
    if (reply.ok) this.dispatchEvent(new SignedInEvent());
  }
}

/** `/desk/set-up#TOKEN`: makes the teacher that the one-time link stands for. */
@customElement('desk-set-up')
export class DeskSetUp extends LitElement {
  static override styles = [deskStyles, pageStyles];

  @state() private refusal = '';
  @state() private busy = false;

  override render() {
    const token = location.hash.slice(1);
    if (token === '')
      return html`<main class="slim">
        <h1>This link is not complete</h1>
        <p>Copy the whole set-up link, with everything after the sign #.</p>
      </main>`;
    return html`<main class="slim">
      <h1>Set up your Desk</h1>
      <p>Choose the name and passphrase that you will sign in with. Students never see them.</p>
      <form class="sheet stack" @submit=${this.submit}>
        <label>Name <input name="name" autocomplete="username" required maxlength="60" /></label>
        <label
          >Passphrase
          <input
            name="passphrase"
            type="password"
            autocomplete="new-password"
            required
            minlength="8"
            maxlength="200"
            aria-describedby="passphrase-hint"
          />
          <span class="soft small" id="passphrase-hint">Eight characters or more; a few words do well.</span>
        </label>
        ${refusalLine(this.refusal)}
        <button class="primary" aria-disabled=${this.busy}>Set up</button>
      </form>
    </main>`;
  }

  private async submit(event: SubmitEvent) {
    const form = formOf(event);
    if (!form || this.busy) return;
    this.busy = true;
    const reply = await api.setUp({
      token: location.hash.slice(1),
      name: fieldText(form, 'name'),
      passphrase: fieldText(form, 'passphrase'),
    });
    this.busy = false;
    this.refusal = reply.ok ? '' : reply.error.message;
    if (reply.ok) this.dispatchEvent(new SignedInEvent());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-sign-in': DeskSignIn;
    'desk-set-up': DeskSetUp;
  }
}
