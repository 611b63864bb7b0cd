/** Size and grade of a bolt: SAE grades have the word in their name, property classes have not. */
export const boltText = ({
  size,
  grade,
}: {
  readonly size: string;
  readonly grade?: string | undefined;
}): string =>
  grade === undefined ? size : `${size}, ${grade.startsWith('grade') ? grade : `grade ${grade}`}`;
