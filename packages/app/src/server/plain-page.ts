import { html } from 'hono/html';

/** A page of its own with a form, which needs no script. @param said why a form was refused; empty: nothing was */
export function plainPage(title: string, said: string, body: ReturnType<typeof html>) {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${title} · Spraywright</title>
        <style>
          :root {
            color-scheme: light dark;
          }
          body {
            font: 16px/1.5 sans-serif;
            margin: 0;
            padding: 3rem 1rem;
            background: light-dark(#f7f3e8, #171613);
            color: light-dark(#1c1a17, #e4dccd);
          }
          main {
            max-width: 24rem;
            margin: auto;
            padding: 0 1.25rem 0.5rem;
            border: 2px solid;
          }
          h1 {
            font-size: 1.25rem;
          }
          a {
            color: inherit;
          }
          label,
          input,
          button {
            display: block;
            width: 100%;
            box-sizing: border-box;
            font: inherit;
          }
          label,
          form {
            margin-bottom: 1rem;
          }
          input,
          button {
            min-height: 44px;
            padding: 0 8px;
            border: 1px solid;
            border-radius: 0;
            background: none;
            color: inherit;
          }
        </style>
      </head>
      <body>
        <main>
          <h1>${title}</h1>
          ${said === '' ? '' : html`<p role="alert">${sentence(said)}</p>`} ${body}
        </main>
      </body>
    </html>`;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}
