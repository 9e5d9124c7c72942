/** Fields of a form, big enough for a glove. */

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly figures?: boolean;
  readonly placeholder?: string;
}

export function TextField({ label, value, change, figures, placeholder }: TextProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        value={value}
        inputMode={figures ? "decimal" : "text"}
        autocomplete="off"
        placeholder={placeholder}
        onInput={(event) => change(event.currentTarget.value)}
      />
    </label>
  );
}

interface ChoicesProps {
  readonly legend: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly words: string }[];
  readonly change: (value: string) => void;
}

export function Choices({ legend, value, choices, change }: ChoicesProps) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      <div class="choices">
        {choices.map((choice) => (
          <label key={choice.value}>
            <input
              type="radio"
              name={legend}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => change(choice.value)}
            />
            {choice.words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
