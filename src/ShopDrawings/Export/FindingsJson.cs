using System.Text.Json;

namespace ShopDrawings;

/// <summary>Writes what the checks say as JSON, as its schema says.</summary>
internal static class FindingsJson
{
    /// <summary>All findings and the panels they hold back.</summary>
    public static void Write(Utf8JsonWriter json, Job job)
    {
        json.WriteStartObject();
        json.WriteString("format", "shopdrawings-findings");
        json.WriteNumber("version", 1);
        json.WriteStartArray("findings");
        foreach (var finding in job.Findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
            json.WriteStartArray("panels");
            foreach (var panel in finding.Panels) json.WriteStringValue(panel);
            json.WriteEndArray();
            json.WriteString("message", finding.Message);
            json.WriteStartArray("numbers");
            foreach (var number in finding.Numbers)
            {
                json.WriteStartObject();
                json.WriteString("name", number.Name);
                json.WriteNumber("value", JsonNumbers.Rounded(number.Value));
                json.WriteString("unit", number.Unit);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("source", finding.Source);
            json.WriteString("cure", finding.Cure);
            if (finding.Where is { } where)
            {
                json.WriteStartObject("where");
                json.WriteString("panel", where.Panel);
                json.Mm("min_mm", where.Box.Min);
                json.Mm("max_mm", where.Box.Max);
                json.WriteEndObject();
            }

            if (finding.Waiver is { } waiver) json.WriteString("waived", waiver);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("withheld");
        foreach (var panel in job.Withheld) json.WriteStringValue(panel);
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
