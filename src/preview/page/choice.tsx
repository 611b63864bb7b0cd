interface ChoiceProps<T extends string> {
  readonly label: string;
  /** A signal, or what stands for one. */
  readonly value: { value: T };
  readonly options: readonly T[];
}

/** One of a few words, shown side by side. */
export function Choice<T extends string>({ label, value, options }: ChoiceProps<T>) {
  return (
    <fieldset class="choice">
      <legend>{label}</legend>
      {options.map((option) => (
        <button
          key={option}
          type="button"
          aria-pressed={value.value === option}
          onClick={() => {
            value.value = option;
          }}
        >
          {option}
        </button>
      ))}
    </fieldset>
  );
}
