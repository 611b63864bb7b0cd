import type { ComponentChildren } from 'preact';

interface RowsProps {
  readonly heads: readonly string[];
  /** For those who do not see the table. */
  readonly caption?: string;
  readonly children: ComponentChildren;
}

/** A table with a row for each thing. */
export function Rows({ heads, caption, children }: RowsProps) {
  return (
    <table class="rows">
      {caption && <caption class="unseen">{caption}</caption>}
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head}>{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  );
}
