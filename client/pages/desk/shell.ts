import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../../components/mark.ts';
import { api, type Me } from './api.ts';
import { deskStyles, pageStyles } from './desk-styles.ts';
import './group/group-page.ts';
import './group/groups-page.ts';
import './live/class-page.ts';
import './plan/page.ts';
import { namingField } from './naming-field.ts';
import { refusalLine } from './refusal.ts';
import { NavigateEvent, homePath, routeOf, type Route } from './routes.ts';
import './sign-in.ts';

const titles: Readonly<Record<Route['kind'], string>> = {
  home: 'Groups',
  'set-up': 'Set up',
  group: 'Group',
  plan: 'Plan',
  class: 'Class',
  handout: 'Handout',
  paper: 'Results from paper',
  unknown: 'Desk',
};

/** The teacher's document: who is signed in, and which of the Desk's pages is shown. */
@customElement('rootcall-desk')
export class RootcallDesk extends LitElement {
  static override styles = [
    deskStyles,
    pageStyles,
    css`
      header {
        align-items: center;
        border-bottom: 1px solid var(--line);
        display: flex;
        gap: var(--space-4);
        justify-content: space-between;
        min-height: 52px;
        padding: var(--space-1) var(--margin);
      }
      .mark {
        align-items: center;
        display: flex;
        font-family: var(--face-title);
        font-size: 1.35rem;
        font-weight: 600;
        gap: var(--space-2);
        min-height: 44px;
        text-decoration: none;
      }
      .menu {
        min-width: 0;
        position: relative;
      }
      .menu summary {
        display: flex;
        gap: var(--space-2);
        max-width: 60vw;
      }
      .menu summary::after {
        content: '▾';
      }
      .menu span {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .menu .soft {
        white-space: normal;
      }
      @media print {
        header {
          display: none;
        }
      }
      .menu .sheet {
        border: 1px solid var(--control);
        position: absolute;
        right: 0;
        width: min(22rem, calc(100vw - 2 * var(--margin)));
        z-index: 2;
      }
    `,
  ];

  @state() private me: Me | null = null;
  @state() private route: Route = routeOf(location.pathname);
  @state() private refusal = '';

  override connectedCallback() {
    super.connectedCallback();
    addEventListener('popstate', this.follow);
    this.addEventListener('click', this.onClick);
    this.addEventListener(NavigateEvent.kind, this.onNavigate);
    void this.load();
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    removeEventListener('popstate', this.follow);
    this.removeEventListener('click', this.onClick);
    this.removeEventListener(NavigateEvent.kind, this.onNavigate);
  }

  protected override updated(properties: PropertyValues) {
    if (properties.has('route' as keyof this)) document.title = `${titles[this.route.kind]} · Rootcall Desk`;
  }

  override render() {
    const { me, route } = this;
    if (this.refusal !== '')
      return html`<main class="slim">
        ${refusalLine(this.refusal)}
        <div><button @click=${this.load}>Try again</button></div>
      </main>`;
    if (!me) return nothing;
    // The live class has a header of its own.
    return html`${me.teacher && route.kind === 'class' ? nothing : this.header(me)}
      <div @desk-signed-in=${this.onSignedIn}>${this.page(me, route)}</div>`;
  }

  private header({ teacher }: Me) {
    return html`<header>
      <a class="mark" href=${homePath}><rootcall-mark></rootcall-mark>Rootcall</a>
      ${
        teacher
          ? html`<details class="menu">
              <summary><span dir="auto">${teacher.name}</span></summary>
              <div class="sheet stack">
                ${namingField()}
                <div class="row">
                  <button @click=${() => this.signOut(api.signOut)}>Sign out</button>
                  <button @click=${() => this.signOut(api.signOutEverywhere)}>Sign out everywhere</button>
                </div>
              </div>
            </details>`
          : html`<span class="soft">Desk</span>`
      }
    </header>`;
  }

  private page({ teacher, needsSetUp }: Me, route: Route) {
    if (route.kind === 'set-up') return html`<desk-set-up></desk-set-up>`;
    if (!teacher && needsSetUp)
      return html`<main class="slim">
        <h1>This Desk has no teacher yet</h1>
        <p>Open the set-up link that the server printed when it started. It works once.</p>
      </main>`;
    if (!teacher) return html`<desk-sign-in></desk-sign-in>`;
    switch (route.kind) {
      case 'home':
        return html`<desk-groups></desk-groups>`;
      case 'group':
        return html`<desk-group .groupId=${route.id}></desk-group>`;
      case 'plan':
        return html`<desk-plan .planId=${route.id}></desk-plan>`;
      case 'class':
        return html`<desk-class .classId=${route.id}></desk-class>`;
      case 'handout':
        void import('./handout/handout-page.ts');
        return html`<desk-handout .groupId=${route.id}></desk-handout>`;
      case 'paper':
        void import('./paper/paper-page.ts');
        return html`<desk-paper .planId=${route.id}></desk-paper>`;
      case 'unknown':
        return html`<main class="slim">
          <h1>There is no such page</h1>
          <p><a href=${homePath}>To your groups</a></p>
        </main>`;
    }
  }

  private readonly load = async (): Promise<void> => {
    const reply = await api.me();
    this.refusal = reply.ok ? '' : reply.error.message;
    if (reply.ok) this.me = reply.value;
  };

  private readonly onSignedIn = async (): Promise<void> => {
    await this.load();
    if (this.route.kind === 'set-up') this.go(homePath, 'replace');
  };

  private async signOut(how: typeof api.signOut): Promise<void> {
    await how();
    this.go(homePath, 'push');
    await this.load();
  }

  private readonly follow = (): void => {
    this.route = routeOf(location.pathname);
  };

  private go(path: string, how: 'push' | 'replace') {
    if (how === 'push') history.pushState(null, '', path);
    else history.replaceState(null, '', path);
    this.follow();
    scrollTo(0, 0);
  }

  /** A press anywhere else puts the menu away. */
  private closeMenu(event: MouseEvent) {
    const menu = this.renderRoot.querySelector<HTMLDetailsElement>('.menu');
    if (menu && !event.composedPath().includes(menu)) menu.open = false;
  }

  private readonly onNavigate = (event: Event): void => {
    if (event instanceof NavigateEvent) this.go(event.path, 'push');
  };

  /** Plain clicks on links within the Desk stay in this document. */
  private readonly onClick = (event: MouseEvent): void => {
    this.closeMenu(event);
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.composedPath().find((target) => target instanceof HTMLAnchorElement);
    if (!link || link.target !== '' || link.origin !== location.origin) return;
    if (routeOf(link.pathname).kind === 'unknown') return;
    event.preventDefault();
    this.go(link.pathname + link.search, 'push');
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-desk': RootcallDesk;
  }
}
