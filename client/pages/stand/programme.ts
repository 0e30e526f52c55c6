import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { barRest } from '../../components/signs.ts';
import { standHeader } from './header.ts';
import { standStyles } from './stand-style.ts';

/** A heading with more letters than this is set smaller: a long name must leave room for what it says. */
const longHeading = 28;

/** A page as from a concert's programme: for all the time in which nothing is to be done here. */
@customElement('stand-programme')
export class StandProgramme extends LitElement {
  static override readonly styles = [
    standStyles,
    css`
      .programme {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
        height: 100%;
      }
      .matter {
        align-content: safe center;
        display: grid;
        gap: var(--space-4);
        justify-content: safe center;
        grid-template-columns: minmax(0, 26rem);
        overflow-y: auto;
        padding: var(--space-3) calc(var(--margin) * 2);
      }
      h1 {
        font-size: clamp(1.75rem, 11vw, 2.75rem);
        line-height: 1.05;
        overflow-wrap: anywhere;
        text-wrap: wrap;
        white-space: pre-line;
      }
      h1.long {
        font-size: clamp(1.375rem, 7vw, 1.75rem);
      }
      /* A name on its own line is read in its own direction, and stays in the column. */
      h1,
      .school {
        text-align: left;
        unicode-bidi: plaintext;
      }
      .school {
        margin-bottom: calc(var(--space-2) * -1);
      }
      .bar-rest {
        height: auto;
        margin-block: var(--space-4);
        max-width: 55%;
      }
      .lead {
        text-wrap: pretty;
      }
      ::slotted(*) {
        width: 100%;
      }
      @media (max-height: 500px) {
        .matter {
          gap: var(--space-2);
        }
        .bar-rest {
          margin-block: var(--space-1);
          width: 8rem;
        }
      }
      @media (max-height: 360px) {
        h1 {
          font-size: 1.5rem;
        }
        .bar-rest {
          display: none;
        }
      }
      @media (max-height: 500px) and (min-width: 560px) {
        .matter {
          column-gap: var(--space-6);
          grid-template-columns: minmax(0, 20rem) minmax(0, 22rem);
        }
        .matter > * {
          grid-column: 1;
        }
        .side {
          align-self: center;
          grid-column: 2;
          grid-row: 1 / span 5;
        }
      }
      .side {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
    `,
  ];

  @property() group = '';
  @property() school = '';
  @property() heading = '';
  @property() words = '';
  @property() more = '';
  /** A bar's rest: more is to come by itself. */
  @property({ type: Boolean }) resting = false;

  protected override render(): TemplateResult {
    return html`<div class="programme">
      ${standHeader(this.group)}
      <div class="matter" tabindex="0">
        ${this.school === '' ? nothing : html`<p class="small soft school">${this.school}</p>`}
        <h1 class=${this.heading.length > longHeading ? 'long' : ''}>${this.heading}</h1>
        <hr />
        ${this.resting ? barRest() : nothing}
        <div class="side">
          <p class="lead">${this.words}</p>
          ${this.more === '' ? nothing : html`<p class="soft">${this.more}</p>`}
          <slot></slot>
        </div>
      </div>
      <slot name="bar"></slot>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-programme': StandProgramme;
  }
}
