/** Cautions in one box, each on its own line. */
export function Cautions({ all }: { readonly all: readonly string[] }) {
  if (all.length === 0) return null;
  return (
    <div className="caution">
      <b>Caution</b>
      <ul className="plain-list">
        {all.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
    </div>
  );
}
