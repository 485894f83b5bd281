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
          body {
            font: 16px/1.5 sans-serif;
            max-width: 24rem;
            margin: 3rem auto;
            padding: 0 1rem;
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
          }
        </style>
      </head>
      <body>
        <h1>${title}</h1>
        ${said === '' ? '' : html`<p role="alert">${said}</p>`} ${body}
      </body>
    </html>`;
}
