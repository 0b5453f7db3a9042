using System.Globalization;
using System.Security;
using System.Text;

namespace Tagend.Pdf;

/// <summary>What a document says of itself: the information dictionary, ISO 32000-1, 14.3.3, and the same as XMP, 14.3.2.</summary>
internal static class PdfInformation
{
    private const string Program = "Tagend";

    /// <param name="date">Of its making, as midnight in UTC.</param>
    /// <returns>The objects of both.</returns>
    public static (int Information, int Metadata) Write(PdfObjects objects, string title, string language, DateOnly date)
    {
        var (information, metadata, day) = (objects.Reserve(), objects.Reserve(), date.ToString("'D:'yyyyMMdd'000000Z'", CultureInfo.InvariantCulture));
        objects.Add(information, new PdfBuffer().Add("<</Title"u8).Text(title).Add("/Author"u8).Text(Program).Add("/Creator"u8).Text(Program)
            .Add("/Producer"u8).Text(Program).Add("/CreationDate"u8).Text(day).Add("/ModDate"u8).Text(day).Add(">>"u8));
        objects.AddStream(metadata, "/Type/Metadata/Subtype/XML"u8, Encoding.UTF8.GetBytes(Xmp(title, language, date)), squeeze: false);
        return (information, metadata);
    }

    /// <summary>XMP (ISO 16684-1), with the mark of PDF/UA-1 (ISO 14289-1, 5); that it is to be read without filters is what programs expect.</summary>
    private static string Xmp(string title, string language, DateOnly date)
    {
        var day = date.ToString("yyyy-MM-dd'T00:00:00Z'", CultureInfo.InvariantCulture);
        return $"""
            <?xpacket begin="{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{SecurityElement.Escape(title)}</rdf:li></rdf:Alt></dc:title>
            <dc:creator><rdf:Seq><rdf:li>{Program}</rdf:li></rdf:Seq></dc:creator>
            <dc:language><rdf:Bag><rdf:li>{SecurityElement.Escape(language)}</rdf:li></rdf:Bag></dc:language>
            <xmp:CreatorTool>{Program}</xmp:CreatorTool><pdf:Producer>{Program}</pdf:Producer>
            <xmp:CreateDate>{day}</xmp:CreateDate><xmp:ModifyDate>{day}</xmp:ModifyDate>
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>
            """;
    }
}
