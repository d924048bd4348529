using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;

namespace Flushback.Cli.Tests.Regression;

/// <summary>The XML for servers of continuous integration.</summary>
public sealed class JUnitTests : IDisposable
{
    // What of the form is used here, in our own words after the schema junit-10.xsd that the xUnit plugin of Jenkins
    // (github.com/jenkinsci/xunit-plugin, src/main/resources/.../model/xsd) holds such files to: names, tests, failures
    // and errors are wanted of a suite, a name of a case; message and type of a failure or an error are free.
    private const string Schema = """
        <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
          <xs:complexType name="outcome" mixed="true">
            <xs:attribute name="type" type="xs:string"/>
            <xs:attribute name="message" type="xs:string"/>
          </xs:complexType>
          <xs:complexType name="case">
            <xs:choice minOccurs="0" maxOccurs="1">
              <xs:element name="failure" type="outcome"/>
              <xs:element name="error" type="outcome"/>
            </xs:choice>
            <xs:attribute name="name" type="xs:string" use="required"/>
            <xs:attribute name="classname" type="xs:string"/>
          </xs:complexType>
          <xs:complexType name="suite">
            <xs:sequence>
              <xs:element name="testcase" type="case" minOccurs="0" maxOccurs="unbounded"/>
            </xs:sequence>
            <xs:attribute name="name" type="xs:string" use="required"/>
            <xs:attribute name="tests" type="xs:nonNegativeInteger" use="required"/>
            <xs:attribute name="failures" type="xs:nonNegativeInteger" use="required"/>
            <xs:attribute name="errors" type="xs:nonNegativeInteger" use="required"/>
            <xs:attribute name="skipped" type="xs:nonNegativeInteger"/>
          </xs:complexType>
          <xs:element name="testsuites">
            <xs:complexType>
              <xs:sequence>
                <xs:element name="testsuite" type="suite" minOccurs="0" maxOccurs="unbounded"/>
              </xs:sequence>
              <xs:attribute name="name" type="xs:string"/>
              <xs:attribute name="tests" type="xs:nonNegativeInteger"/>
              <xs:attribute name="failures" type="xs:nonNegativeInteger"/>
              <xs:attribute name="errors" type="xs:nonNegativeInteger"/>
            </xs:complexType>
          </xs:element>
        </xs:schema>
        """;

    private readonly LibraryOnDisk _library = LibraryOnDisk.OfFour();

    [Fact]
    public async Task It_has_the_form_and_a_case_an_item_with_what_is_the_matter()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));
        _library.Put("curlew.dxf", "<no & drawing>\u0001");
        File.Delete(_library.PathOf("round/dunlin.dxf"));

        await _library.RegressAsync("--out", _library.Beside("out"));

        XElement suite = Valid(Path.Combine(_library.Beside("out"), "junit.xml")).Root!.Element("testsuite")!;
        Assert.Equal(("4", "2", "1"), (Of(suite, "tests"), Of(suite, "failures"), Of(suite, "errors")));
        Assert.Equal(
            ["curlew.dxf error error", "round/dunlin.dxf failure gone", "wader.yaml", "wagtail.dxf failure changed"],
            suite.Elements().Select(Told)
        );
        Assert.Equal("round", Of(suite.Elements().ElementAt(1), "classname"));
        XElement changed = suite.Elements().Last().Element("failure")!;
        Assert.Equal(Of(changed, "message"), changed.Value);
        Assert.StartsWith("handle, outline: off by up to 0.04", changed.Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_library_that_is_as_before_has_no_failure()
    {
        await _library.UpdateAsync();
        await _library.RegressAsync("--out", _library.Beside("out"));

        XElement root = Valid(Path.Combine(_library.Beside("out"), "junit.xml")).Root!;

        Assert.Equal(("4", "0", "0"), (Of(root, "tests"), Of(root, "failures"), Of(root, "errors")));
        Assert.Empty(root.Descendants("failure"));
    }

    /// <inheritdoc/>
    public void Dispose() => _library.Dispose();

    private static XDocument Valid(string path)
    {
        XmlSchemaSet schemas = new();
        using StringReader text = new(Schema);
        using XmlReader reader = XmlReader.Create(text);
        schemas.Add("", reader);
        XDocument document = XDocument.Load(path);
        document.Validate(schemas, (_, fault) => Assert.Fail(fault.Message));
        return document;
    }

    private static string Told(XElement item) =>
        item.Elements().SingleOrDefault() is { } outcome
            ? $"{Of(item, "name")} {outcome.Name} {Of(outcome, "type")}"
            : Of(item, "name");

    private static string Of(XElement element, string attribute) => element.Attribute(attribute)!.Value;
}
