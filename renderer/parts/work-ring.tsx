/** A ring that fills as far as figures are worked out; always beside words that say the same. */
export function WorkRing({ share }: { share: number }) {
  return (
    <svg className="ring-mark" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <circle cx="8" cy="8" r="6.5" className="work-ring" />
      <circle
        cx="8"
        cy="8"
        r="6.5"
        className="work-done"
        pathLength="1"
        strokeDasharray={`${share} 1`}
        transform="rotate(-90 8 8)"
      />
    </svg>
  );
}
