import { hazardWords } from "../words/parts.ts";

/**
 * The signal word of ANSI Z535.4 with its colour; the alert triangle stands
 * before every word but notice, which speaks of no injury.
 */
export function Hazard(props: {
  word: string;
  small?: boolean;
  /** It would be of this kind if it failed; filled, it is. */
  outlined?: boolean;
  /** The signal word in another language than the app's. */
  said?: string | undefined;
}) {
  const { word, small, outlined, said } = props;
  const known = word in hazardWords ? word : "notice";
  return (
    <span
      class={`hazard hazard-${known}${small ? " hazard-small" : ""}${outlined ? " hazard-outlined" : ""}`}
    >
      {known !== "notice" && (
        <svg class="hazard-sign" viewBox="0 0 24 22" aria-hidden="true">
          <path d="M12 1 23 21H1Z" fill="currentColor" />
          <path class="hazard-mark" d="M12 7.5v7M12 16.6v2" stroke-width="2.4" />
        </svg>
      )}
      <span>{said || hazardWords[known]}</span>
    </span>
  );
}
