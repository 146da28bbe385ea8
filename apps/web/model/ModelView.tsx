export default function ModelView() {
  return <p className="waiting">The model comes with the next step.</p>;
}
