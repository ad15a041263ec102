using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>A stage of drying as the standards name it.</summary>
/// <param name="Test">How it is found, in the style of the standard.</param>
/// <param name="Standard">The standard that names it.</param>
public sealed record DryStage(string Id, Phrase Name, Phrase Test, string Standard);

/// <summary>
/// Stages in the order in which a film passes them. ASTM D1640 (list from memory); ISO 9117 names through-dry (part 1),
/// surface-dry (part 3, read) and print-free (part 6). Both want a smooth film on a smooth, non-absorbent surface.
/// </summary>
public static class DryStages
{
    public static IReadOnlyList<DryStage> All { get; } =
    [
        new("set-to-touch", v => v.Say("set to touch", "fijado al tacto"), v => v.Say("tacky, but nothing comes off on a clean finger", "pegajoso, pero nada pasa a un dedo limpio"), "ASTM D1640"),
        new("dust-free", v => v.Say("dust free", "libre de polvo"), v => v.Say("cotton fibres blow off", "las fibras de algodón se van al soplar"), "ASTM D1640"),
        new("tack-free", v => v.Say("tack free", "libre de pegajosidad"), v => v.Say("paper pressed on does not stick", "un papel apretado no se pega"), "ASTM D1640"),
        new("dry-to-touch", v => v.Say("dry to touch", "seco al tacto"), v => v.Say("a light touch leaves no mark and takes nothing off", "un toque ligero no deja marca ni arrastra nada"), "ASTM D1640"),
        new("surface-dry", v => v.Say("surface dry", "seco en superficie"), v => v.Say("fine glass beads brush off without harming the film", "las microesferas de vidrio se cepillan sin dañar la película"), "ISO 9117-3"),
        new("dry-hard", v => v.Say("dry hard", "seco duro"), v => v.Say("a thumb pressed hard leaves no mark after polishing", "el pulgar apretado no deja marca tras frotar"), "ASTM D1640"),
        new("dry-through", v => v.Say("dry through (dry to handle)", "seco en profundidad (manipulable)"), v => v.Say("a thumb pressed and turned does not loosen or wrinkle the film", "el pulgar apretado y girado no suelta ni arruga la película"), "ASTM D1640, ISO 9117-1"),
        new("dry-to-recoat", v => v.Say("dry to recoat", "listo para repintar"), v => v.Say("a second coat goes on without lifting the first", "una segunda capa no levanta la primera"), "ASTM D1640"),
        new("print-free", v => v.Say("print free", "libre de impresión"), v => v.Say("gauze under load leaves no print", "una gasa con peso no deja huella"), "ASTM D1640, ISO 9117-6"),
    ];
}
