import { LitElement, css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { api, type Group } from '../api.ts';
import { deskStyles, pageStyles } from '../desk-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { formOf, refusalLine } from '../refusal.ts';
import { NavigateEvent, classPath, groupPath } from '../routes.ts';
import { spacedCode } from '../spaced-code.ts';
import { groupLine } from './words.ts';
import { groupFields, newGroup, settingsIn } from './group-fields.ts';

/** The teacher's groups, and the way to a new one. */
@customElement('desk-groups')
export class DeskGroups extends LitElement {
  static override styles = [
    deskStyles,
    pageStyles,
    css`
      li {
        align-items: center;
        border-top: 1px solid var(--line);
        display: grid;
        gap: var(--space-2) var(--space-4);
        grid-template-columns: 1fr auto;
        padding-block: var(--space-3);
      }
      li:first-child {
        border-top: 0;
      }
      .fields {
        align-items: start;
        display: grid;
        gap: var(--space-3) var(--space-5);
        grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr));
      }
      .last {
        grid-column: 1 / -1;
      }
      .name {
        font-family: var(--face-title);
        font-size: 1.25rem;
        font-weight: 600;
      }
      details summary {
        cursor: pointer;
        font-weight: 600;
        padding-block: var(--space-2);
      }
    `,
  ];

  @state() private groups: readonly Group[] | null = null;
  @state() private refusal = '';
  @state() private invitation = '';
  private readonly naming = new NamingHere(this);
  private readonly fresh = newGroup(Date.now());

  override connectedCallback() {
    super.connectedCallback();
    void this.load();
  }

  override render() {
    return html`<main>
      <h1>Your groups</h1>
      ${this.groups === null ? html`<p class="soft">Looking them up.</p>` : this.list(this.groups)}
      ${refusalLine(this.refusal)}
      <section class="sheet">
        <details ?open=${this.groups?.length === 0}>
          <summary>Add a group</summary>
          <form class="fields" @submit=${this.add}>
            ${groupFields(this.fresh, this.naming.of(this.fresh.naming))}
            <div class="last">
              <button class=${this.groups?.length === 0 ? 'primary' : ''}>Add this group</button>
            </div>
          </form>
        </details>
      </section>
      <section class="sheet row">
        <a class="button" href="/explore">Explore the neck</a>
        <span class="soft small">For you and your students, without a class.</span>
      </section>
      <section class="sheet stack">
        <div class="row">
          <button @click=${this.invite}>Invite another teacher</button>
          <span class="soft small"
            >Makes a link that works once. Each teacher sees only their own groups.</span
          >
        </div>
        ${
          this.invitation === ''
            ? nothing
            : html`<label>Pass this link on <input readonly .value=${this.invitation} /></label>`
        }
      </section>
    </main>`;
  }

  private list(groups: readonly Group[]) {
    if (groups.length === 0)
      return html`<p>A group is the people you teach together over weeks. Add the first one here.</p>`;
    return html`<ul class="sheet">
      ${groups.map(
        (group) =>
          html`<li>
            <div>
              <a class="name" dir="auto" href=${groupPath(group.id)}>${group.name}</a>
              <p class="soft">${groupLine(group, this.naming.of(group.naming))}</p>
            </div>
            ${
              group.openClass
                ? html`<a class="button primary" href=${classPath(group.openClass.id)}
                    >Back to the class · ${spacedCode(group.openClass.code)}</a
                  >`
                : html`<a class="button" href=${groupPath(group.id)} aria-label=${`Open ${group.name}`}
                    >Open</a
                  >`
            }
          </li>`,
      )}
    </ul>`;
  }

  private async load() {
    const reply = await api.groups();
    if (reply.ok) this.groups = reply.value.groups;
    else this.refusal = reply.error.message;
  }

  private async add(event: SubmitEvent) {
    const form = formOf(event);
    if (!form) return;
    const reply = await api.addGroup(settingsIn(form));
    if (reply.ok) this.dispatchEvent(new NavigateEvent(groupPath(reply.value.id)));
    else this.refusal = reply.error.message;
  }

  private async invite() {
    const reply = await api.invite();
    if (reply.ok) this.invitation = reply.value.link;
    else this.refusal = reply.error.message;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-groups': DeskGroups;
  }
}
