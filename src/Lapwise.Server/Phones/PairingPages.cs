using System.Security.Cryptography;
using System.Text;
using Lapwise.Core.Explain;

namespace Lapwise.Server.Phones;

/// <summary>The two pages that a phone sees before it is let in: no script, nothing from elsewhere, one style that the policy names by its hash.</summary>
internal static class PairingPages
{
    private const string Style = """
        body { margin: 0; background: #f4efe4; color: #20282d; font: 1.05rem/1.5 system-ui, sans-serif; }
        main { max-width: 34rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
        h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .8rem; }
        label { display: block; font-weight: 650; margin-top: 1rem; }
        input { font: inherit; font-size: 1.3rem; width: 100%; box-sizing: border-box; min-height: 3.5rem; padding: .5rem .8rem; border: 2px solid #7d7361; border-radius: .4rem; background: #fffdf8; color: inherit; }
        #code { letter-spacing: .3em; font-variant-numeric: tabular-nums; }
        button, .go { font: inherit; font-weight: 650; display: block; width: 100%; box-sizing: border-box; min-height: 3.5rem; padding: .8rem 1rem; margin-top: 1.2rem; border: 2px solid #1e4347; border-radius: .4rem; background: #2f5d62; color: #fff; text-align: center; text-decoration: none; }
        :focus-visible { outline: 3px solid #1e4347; outline-offset: 2px; }
        .wrong { border-left: 4px solid #8c1c13; background: #f8e7e2; padding: .6rem .9rem; font-weight: 600; }
        .hint { color: #505b62; }
        ol { padding-left: 1.3rem; } li { margin: .5rem 0; }
        code { font-size: .95rem; overflow-wrap: anywhere; display: block; background: #fffdf8; border: 1px solid #d8cfbd; padding: .6rem; }
        """;

    public static readonly string Policy =
        "default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; style-src 'sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Style))) + "'";

    public static string Code(Voice voice, CodeAnswer? answer)
    {
        var said = answer switch
        {
            CodeAnswer.Wrong => voice.Say("That is not the code on the shop's computer. Look again; after five tries a new one is needed.", "Ese no es el código del computador del taller. Mírelo de nuevo; tras cinco intentos hace falta uno nuevo."),
            CodeAnswer.NoneShown => voice.Say("No code holds right now: it was used, ran out after ten minutes, or was tried too often. Show a new one on the shop's computer.", "Ahora no vale ningún código: se usó, venció a los diez minutos o se intentó demasiadas veces. Muestre uno nuevo en el computador del taller."),
            _ => "",
        };
        return Whole(voice, voice.Say("Let this phone in", "Dar acceso a este teléfono"), $"""
            <p>{voice.Say("On the shop's computer, open Lapwise, then Phones, and show a code.", "En el computador del taller abra Lapwise, luego Teléfonos, y muestre un código.")}</p>
            {(said.Length == 0 ? "" : $"<p class=\"wrong\" role=\"alert\">✗ {said}</p>")}
            <form method="post" action="/pair{Speaking(voice)}">
            <label for="code">{voice.Say("Code on the shop's computer", "Código del computador del taller")}</label>
            <input id="code" name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="12" required>
            <label for="name">{voice.Say("What this phone is called on the list", "Cómo se llama este teléfono en la lista")}</label>
            <input id="name" name="name" autocomplete="off" maxlength="40">
            <button>{voice.Say("Let it in", "Dar acceso")}</button>
            </form>
            """);
    }

    /// <param name="fingerprint">Shown on both screens, to compare.</param>
    /// <param name="next">The pairing page behind the encrypted door.</param>
    public static string Certificate(Voice voice, string fingerprint, string next) => Whole(voice, voice.Say("Trust the shop's computer", "Confiar en el computador del taller"), $"""
        <p>{voice.Say("Once for each phone. It lets this phone talk to the shop's computer in private, and to nothing else: the certificate holds only for addresses inside a private network.", "Una vez por teléfono. Permite que este teléfono hable en privado con el computador del taller, y con nada más: el certificado solo vale para direcciones de una red privada.")}</p>
        <a class="go" href="{Gate.CertificatePath}">{voice.Say("1. Take the certificate", "1. Bajar el certificado")}</a>
        <p><strong>{voice.Say("2. Install it.", "2. Instalarlo.")}</strong></p>
        <ul>
        <li>Android: {voice.Say("Settings, search for “CA certificate”, install from storage, choose lapwise-shop.crt. The warning that follows is meant for strangers' certificates; this one is your own computer's.", "Ajustes, busque «certificado CA», instalar desde el almacenamiento, elija lapwise-shop.crt. El aviso que sigue es por certificados de desconocidos; este es de su propio computador.")}</li>
        <li>iPhone, iPad: {voice.Say("Settings, Profile Downloaded, Install. Then Settings, General, About, Certificate Trust Settings, and switch it on.", "Ajustes, Perfil descargado, Instalar. Luego Ajustes, General, Información, Ajustes de confianza de certificados, y actívelo.")}</li>
        </ul>
        <p>{voice.Say("Before you say yes, compare: the phone shows a SHA-256 fingerprint, and it must be the one on the shop's screen.", "Antes de aceptar, compare: el teléfono muestra una huella SHA-256 y debe ser la de la pantalla del taller.")}</p>
        <code>{fingerprint}</code>
        <a class="go" href="{next}{Speaking(voice)}">{voice.Say("3. Go on to the code", "3. Seguir con el código")}</a>
        <p class="hint">{voice.Say("If the phone now warns that the connection is not private, step 2 is not finished. Do not go on past the warning.", "Si el teléfono avisa de que la conexión no es privada, falta terminar el paso 2. No siga más allá del aviso.")}</p>
        """);

    private static string Speaking(Voice voice) => voice.Language == Language.Spanish ? "?language=es" : "?language=en";

    private static string Whole(Voice voice, string title, string body) => $"""
        <!doctype html>
        <html lang="{(voice.Language == Language.Spanish ? "es" : "en")}">
        <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{title} · Lapwise</title><style>{Style}</style></head>
        <body><main><h1>{title}</h1>
        {body}
        <p><a href="{(voice.Language == Language.Spanish ? "?language=en" : "?language=es")}" lang="{(voice.Language == Language.Spanish ? "en" : "es")}">{(voice.Language == Language.Spanish ? "In English" : "En español")}</a></p>
        </main></body></html>
        """;
}
