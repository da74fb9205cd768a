Attribute VB_Name = "WarpFunctions"
' Written by: python -m costing.front_ends.excel.build
' Do not change it by hand: import the file again when the formulas have changed.
'
' It goes into an add-in that has the VBA module of xlwings, whose XLPy starts Python. A refused call is the
' error #VALUE! in the cell, never a text; WARP_REASON_FOR says why.
Option Explicit

Private Const PYTHON_MODULE As String = "costing.front_ends.excel.functions"
Private Const CATEGORY As String = "Denim warp costing"

' Run this by hand: it shows the Python that calculates, or why there is none.
Public Sub WarpStatus()
    On Error GoTo Refused
    MsgBox "Version " & XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_VERSION", Array()) & ", " & _
        XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_INTERPRETER", Array()), vbInformation, CATEGORY
    Exit Sub
Refused:
    MsgBox "Python does not answer: " & Err.Description, vbExclamation, CATEGORY
End Sub

' Run this once, before the add-in is saved: it fills in the texts of the function dialog.
Public Sub WarpDescribe()
    DescribeGroup1
    DescribeGroup2
    DescribeGroup3
    DescribeGroup4
    DescribeGroup5
    DescribeGroup6
    DescribeGroup7
    DescribeGroup8
    DescribeGroup9
    DescribeGroup10
    DescribeGroup11
    DescribeGroup12
    DescribeGroup13
    DescribeGroup14
    DescribeGroup15
    DescribeGroup16
    DescribeGroup17
    DescribeGroup18
End Sub

' A reference as the values of its cells, everything else as it is.
Private Function CellsOf(ByVal argument As Variant) As Variant
    If IsObject(argument) Then
        CellsOf = ValuesOf(argument)
    Else
        CellsOf = argument
    End If
End Function

' Value2 and not Value, which rounds a cell with a currency format to four decimals. A reference of several
' areas is handed over as an error, for Value2 gives the first of them only.
Private Function ValuesOf(ByVal reference As Object) As Variant
    If reference.Areas.Count = 1 Then
        ValuesOf = reference.Value2
    Else
        ValuesOf = CVErr(xlErrRef)
    End If
End Function

Private Sub Describe(ByVal functionName As String, ByVal help As String, ByVal arguments As Variant)
    Dim fullName As String
    fullName = "'" & ThisWorkbook.Name & "'!" & functionName
    If UBound(arguments) < 0 Then
        Application.MacroOptions Macro:=fullName, Description:=help, Category:=CATEGORY
    Else
        Application.MacroOptions Macro:=fullName, Description:=help, Category:=CATEGORY, _
            ArgumentDescriptions:=arguments
    End If
End Sub

' Yarn
Private Sub DescribeGroup1()
    Describe "WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT", "Yarn: Linear density of a yarn from its English cotton count. Gives: linear density [tex].", _
        Array("English cotton count: hanks of 840 yd per pound [Ne], 0.5 to 500 Ne", _
        "unit of the result; left out: tex")
    Describe "WARP_ENGLISH_COUNT_FROM_LINEAR_DENSITY", "Yarn: English cotton count of a yarn from its linear density. Gives: english count [Ne].", _
        Array("mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: Ne")
    Describe "WARP_LINEAR_DENSITY_FROM_METRIC_COUNT", "Yarn: Linear density of a yarn from its metric count. Gives: linear density [tex].", _
        Array("metric count: km per kg [Nm], 1 to 1000 Nm", "unit of the result; left out: tex")
    Describe "WARP_METRIC_COUNT_FROM_LINEAR_DENSITY", "Yarn: Metric count of a yarn from its linear density. Gives: metric count [Nm].", _
        Array("mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: Nm")
    Describe "WARP_LINEAR_DENSITY_FROM_DENIER", "Yarn: Linear density of a yarn from its denier. Gives: linear density [tex].", _
        Array("mass per length in denier [den], 9 to 9000 den", "unit of the result; left out: tex")
    Describe "WARP_DENIER_FROM_LINEAR_DENSITY", "Yarn: Denier of a yarn from its linear density. Gives: denier count [den].", _
        Array("mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: den")
    Describe "WARP_PLIED_LINEAR_DENSITY", "Yarn: Linear density of a plied yarn; a single yarn stays as it is spun. Gives: linear density [tex].", _
        Array("mass per length of one single yarn [tex], 1 to 1000 tex", _
        "number of single yarns in the yarn, a whole number from 1 to 12", _
        "gain of linear density by the twist of plying [%], 0 to 20 %; left out: 0 %", _
        "unit of the result; left out: tex")
    Describe "WARP_CORE_SPUN_LINEAR_DENSITY", "Yarn: Linear density of a core-spun yarn, as spun. Gives: linear density [tex].", _
        Array("mass per length of one single yarn [tex], 1 to 1000 tex", _
        "core of a core-spun yarn before it is drawn out [dtex], 5 to 5000 dtex", _
        "times the core is drawn out while it is spun in, 1 to 10", _
        "unit of the result; left out: tex")
    Describe "WARP_SIZED_LINEAR_DENSITY", "Yarn: Linear density of a sized yarn. Gives: sized linear density [tex].", _
        Array("mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "unit of the result; left out: tex")
    Describe "WARP_YARN_LENGTH_FROM_MASS", "Yarn: Length of yarn in a mass of yarn. Gives: yarn length [m].", _
        Array("mass of yarn [kg], 0 to 10,000,000 kg", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: m")
    Describe "WARP_YARN_MASS_FROM_LENGTH", "Yarn: Mass of a length of yarn. Gives: yarn mass [kg].", _
        Array("length of one end [m], 0 to 1,000,000,000 m", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: kg")
    Describe "WARP_BONE_DRY_MASS", "Yarn: Bone-dry fibre in the nominal mass of a yarn. Gives: bone dry mass [kg/kg].", _
        Array("moisture of the commercial mass, of the bone-dry mass [%], 0 to 20 %; left out: 8.5 %", _
        "unit of the result; left out: kg/kg")
End Sub

Public Function WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT(ByVal english_count As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT = XLPy.CallUDF(PYTHON_MODULE, "WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT", _
        Array(CellsOf(english_count), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT = CVErr(xlErrValue)
End Function

Public Function WARP_ENGLISH_COUNT_FROM_LINEAR_DENSITY(ByVal linear_density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ENGLISH_COUNT_FROM_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_ENGLISH_COUNT_FROM_LINEAR_DENSITY", _
        Array(CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ENGLISH_COUNT_FROM_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_LINEAR_DENSITY_FROM_METRIC_COUNT(ByVal metric_count As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LINEAR_DENSITY_FROM_METRIC_COUNT = XLPy.CallUDF(PYTHON_MODULE, "WARP_LINEAR_DENSITY_FROM_METRIC_COUNT", _
        Array(CellsOf(metric_count), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LINEAR_DENSITY_FROM_METRIC_COUNT = CVErr(xlErrValue)
End Function

Public Function WARP_METRIC_COUNT_FROM_LINEAR_DENSITY(ByVal linear_density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_METRIC_COUNT_FROM_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_METRIC_COUNT_FROM_LINEAR_DENSITY", _
        Array(CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_METRIC_COUNT_FROM_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_LINEAR_DENSITY_FROM_DENIER(ByVal denier_count As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LINEAR_DENSITY_FROM_DENIER = XLPy.CallUDF(PYTHON_MODULE, "WARP_LINEAR_DENSITY_FROM_DENIER", _
        Array(CellsOf(denier_count), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LINEAR_DENSITY_FROM_DENIER = CVErr(xlErrValue)
End Function

Public Function WARP_DENIER_FROM_LINEAR_DENSITY(ByVal linear_density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DENIER_FROM_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_DENIER_FROM_LINEAR_DENSITY", _
        Array(CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DENIER_FROM_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_PLIED_LINEAR_DENSITY(ByVal single_linear_density As Variant, _
        ByVal ply As Variant, Optional ByVal twist_contraction As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(twist_contraction) Then twist_contraction = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PLIED_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_PLIED_LINEAR_DENSITY", _
        Array(CellsOf(single_linear_density), CellsOf(ply), CellsOf(twist_contraction), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PLIED_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_CORE_SPUN_LINEAR_DENSITY(ByVal single_linear_density As Variant, _
        ByVal core_linear_density As Variant, ByVal draft As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CORE_SPUN_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_CORE_SPUN_LINEAR_DENSITY", _
        Array(CellsOf(single_linear_density), CellsOf(core_linear_density), CellsOf(draft), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CORE_SPUN_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_SIZED_LINEAR_DENSITY(ByVal linear_density As Variant, _
        ByVal size_add_on As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZED_LINEAR_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZED_LINEAR_DENSITY", _
        Array(CellsOf(linear_density), CellsOf(size_add_on), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZED_LINEAR_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_YARN_LENGTH_FROM_MASS(ByVal yarn_mass As Variant, _
        ByVal linear_density As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_YARN_LENGTH_FROM_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_YARN_LENGTH_FROM_MASS", _
        Array(CellsOf(yarn_mass), CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_YARN_LENGTH_FROM_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_YARN_MASS_FROM_LENGTH(ByVal yarn_length As Variant, _
        ByVal linear_density As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_YARN_MASS_FROM_LENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_YARN_MASS_FROM_LENGTH", _
        Array(CellsOf(yarn_length), CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_YARN_MASS_FROM_LENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_BONE_DRY_MASS(Optional ByVal commercial_regain As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(commercial_regain) Then commercial_regain = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BONE_DRY_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_BONE_DRY_MASS", _
        Array(CellsOf(commercial_regain), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BONE_DRY_MASS = CVErr(xlErrValue)
End Function

' Cloth
Private Sub DescribeGroup2()
    Describe "WARP_CRIMP_FROM_TAKE_UP", "Cloth: Crimp on the cloth length from take-up on the warp length. Gives: crimp [%].", _
        Array("share of the warp length lost to crimp [%], 0 to 40 %", "unit of the result; left out: %")
    Describe "WARP_TAKE_UP_FROM_CRIMP", "Cloth: Take-up on the warp length from crimp on the cloth length. Gives: take up [%].", _
        Array("yarn length over cloth length, less one [%], 0 to 60 %", "unit of the result; left out: %")
    Describe "WARP_ENDS_FROM_DENSITY", "Cloth: Ends over the full width, as calculated, with its fraction. Gives: ends.", _
        Array("ends per length of width, on the stated width basis [1/cm], 1 to 200 1/cm", _
        "width of the cloth or in the reed, as the width basis says [cm], 10 to 600 cm", _
        "extra ends of both selvedges together, a whole number from 0 to 400; left out: 0", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_WHOLE_ENDS_FROM_DENSITY", "Cloth: Ends over the full width, rounded up to whole ends. Gives: ends.", _
        Array("ends per length of width, on the stated width basis [1/cm], 1 to 200 1/cm", _
        "width of the cloth or in the reed, as the width basis says [cm], 10 to 600 cm", _
        "extra ends of both selvedges together, a whole number from 0 to 400; left out: 0", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_CLOTH_WIDTH_FROM_REED_WIDTH", "Cloth: Width of the loom-state cloth from the width in the reed. Gives: cloth width [cm].", _
        Array("width of the warp in the reed [cm], 10 to 600 cm", _
        "weft crimp, of the cloth width [%], 0 to 60 %", "unit of the result; left out: cm")
    Describe "WARP_REED_WIDTH_FROM_CLOTH_WIDTH", "Cloth: Width in the reed, and so the length of one pick, from the width of the loom-state cloth. Gives: reed width [cm].", _
        Array("width of the loom-state cloth [cm], 10 to 600 cm", _
        "weft crimp, of the cloth width [%], 0 to 60 %", "unit of the result; left out: cm")
    Describe "WARP_WARP_AREAL_MASS", "Cloth: Unsized warp in the loom-state cloth, per area. Gives: warp areal mass [g/m2].", _
        Array("ends per length of width, on the stated width basis [1/cm], 1 to 200 1/cm", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "yarn length over cloth length, less one [%], 0 to 60 %", _
        "unit of the result; left out: g/m2")
    Describe "WARP_WEFT_AREAL_MASS", "Cloth: Weft in the loom-state cloth, per area. Gives: weft areal mass [g/m2].", _
        Array("picks per length of loom-state cloth [1/cm], 1 to 200 1/cm", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "weft crimp, of the cloth width [%], 0 to 60 %", "unit of the result; left out: g/m2")
    Describe "WARP_LOOM_STATE_AREAL_MASS", "Cloth: Loom-state cloth with its size, per area. Gives: loom state areal mass [g/m2].", _
        Array("warp in the loom-state cloth [g/m2], 0 to 2000 g/m2", _
        "weft in the loom-state cloth [g/m2], 0 to 2000 g/m2", _
        "size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "unit of the result; left out: g/m2")
    Describe "WARP_FINISHED_AREAL_MASS", "Cloth: Finished cloth, per area. Gives: finished areal mass [g/m2].", _
        Array("loom-state cloth with its size [g/m2], 0 to 3000 g/m2", _
        "mass lost in desizing, of the loom-state mass [%], 0 to 30 %", _
        "other mass lost in finishing, of the loom-state mass [%], 0 to 30 %", _
        "mass added in finishing, of the loom-state mass [%], 0 to 30 %", _
        "loss of length in finishing, of the loom-state length [%], -10 to 30 %", _
        "loss of width in finishing, of the loom-state width [%], -10 to 50 %", _
        "unit of the result; left out: g/m2")
    Describe "WARP_AREAL_MASS_IN_OUNCES", "Cloth: Mass per area in ounces per square yard. Gives: areal mass ounces [oz/yd2].", _
        Array("mass per area of cloth [g/m2], 0 to 4000 g/m2", "unit of the result; left out: oz/yd2")
    Describe "WARP_AREAL_MASS_FROM_OUNCES", "Cloth: Mass per area from ounces per square yard. Gives: areal mass [g/m2].", _
        Array("mass per area of cloth in ounces per square yard [oz/yd2], 0 to 120 oz/yd2", _
        "unit of the result; left out: g/m2")
    Describe "WARP_WARP_LENGTH_FROM_CLOTH_LENGTH", "Cloth: Warp that a length of loom-state cloth takes. Gives: warp length [m].", _
        Array("length of loom-state cloth [m], 0 to 100,000,000 m", _
        "yarn length over cloth length, less one [%], 0 to 60 %", _
        "warp lost from warping to weaving, of the warp fed [%], 0 to 25 %; left out: 0 %", _
        "unit of the result; left out: m")
    Describe "WARP_CLOTH_LENGTH_FROM_WARP_LENGTH", "Cloth: Loom-state cloth that a length of warp makes. Gives: cloth length [m].", _
        Array("length of warp [m], 0 to 100,000,000 m", _
        "yarn length over cloth length, less one [%], 0 to 60 %", _
        "warp lost from warping to weaving, of the warp fed [%], 0 to 25 %; left out: 0 %", _
        "unit of the result; left out: m")
    Describe "WARP_LOOM_STATE_LENGTH_FROM_FINISHED", "Cloth: Loom-state cloth that a length of finished cloth takes. Gives: cloth length [m].", _
        Array("length of finished cloth [m], 0 to 100,000,000 m", _
        "loss of length in finishing, of the loom-state length [%], -10 to 30 %", _
        "unit of the result; left out: m")
    Describe "WARP_FINISHED_LENGTH_FROM_LOOM_STATE", "Cloth: Finished cloth that a length of loom-state cloth gives. Gives: finished length [m].", _
        Array("length of loom-state cloth [m], 0 to 100,000,000 m", _
        "loss of length in finishing, of the loom-state length [%], -10 to 30 %", _
        "unit of the result; left out: m")
    Describe "WARP_FINISHED_WIDTH_FROM_LOOM_STATE", "Cloth: Width of the finished cloth from the width of the loom-state cloth. Gives: finished width [cm].", _
        Array("width of the loom-state cloth [cm], 10 to 600 cm", _
        "loss of width in finishing, of the loom-state width [%], -10 to 50 %", _
        "unit of the result; left out: cm")
    Describe "WARP_LOOM_STATE_WIDTH_FROM_FINISHED", "Cloth: Width of the loom-state cloth from the width of the finished cloth. Gives: cloth width [cm].", _
        Array("width of the finished cloth [cm], 10 to 600 cm", _
        "loss of width in finishing, of the loom-state width [%], -10 to 50 %", _
        "unit of the result; left out: cm")
    Describe "WARP_WARP_MASS_PER_METRE", "Cloth: Grey warp yarn bought for one metre of loom-state cloth. Gives: warp mass per metre [g/m].", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "yarn length over cloth length, less one [%], 0 to 60 %", _
        "warp lost from warping to weaving, of the warp fed [%], 0 to 25 %", _
        "unit of the result; left out: g/m")
    Describe "WARP_WEFT_MASS_PER_METRE", "Cloth: Weft yarn bought for one metre of loom-state cloth. Gives: weft mass per metre [g/m].", _
        Array("picks per length of loom-state cloth [1/cm], 1 to 200 1/cm", _
        "width of the warp in the reed [cm], 10 to 600 cm", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "weft lost in weaving, of the weft fed [%], 0 to 25 %", "unit of the result; left out: g/m")
    Describe "WARP_WARP_MASS_PER_FINISHED_METRE", "Cloth: Grey warp yarn bought for one metre of finished cloth. Gives: warp mass per finished metre [g/m].", _
        Array("grey warp yarn bought per metre of loom-state cloth [g/m], 0 to 5000 g/m", _
        "loss of length in finishing, of the loom-state length [%], -10 to 30 %", _
        "unit of the result; left out: g/m")
    Describe "WARP_WEFT_MASS_PER_FINISHED_METRE", "Cloth: Weft yarn bought for one metre of finished cloth. Gives: weft mass per finished metre [g/m].", _
        Array("weft yarn bought per metre of loom-state cloth [g/m], 0 to 5000 g/m", _
        "loss of length in finishing, of the loom-state length [%], -10 to 30 %", _
        "unit of the result; left out: g/m")
End Sub

Public Function WARP_CRIMP_FROM_TAKE_UP(ByVal take_up As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CRIMP_FROM_TAKE_UP = XLPy.CallUDF(PYTHON_MODULE, "WARP_CRIMP_FROM_TAKE_UP", _
        Array(CellsOf(take_up), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CRIMP_FROM_TAKE_UP = CVErr(xlErrValue)
End Function

Public Function WARP_TAKE_UP_FROM_CRIMP(ByVal crimp As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_TAKE_UP_FROM_CRIMP = XLPy.CallUDF(PYTHON_MODULE, "WARP_TAKE_UP_FROM_CRIMP", _
        Array(CellsOf(crimp), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_TAKE_UP_FROM_CRIMP = CVErr(xlErrValue)
End Function

Public Function WARP_ENDS_FROM_DENSITY(ByVal ends_density As Variant, ByVal width As Variant, _
        Optional ByVal selvedge_ends As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(selvedge_ends) Then selvedge_ends = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ENDS_FROM_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_ENDS_FROM_DENSITY", _
        Array(CellsOf(ends_density), CellsOf(width), CellsOf(selvedge_ends), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ENDS_FROM_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_WHOLE_ENDS_FROM_DENSITY(ByVal ends_density As Variant, ByVal width As Variant, _
        Optional ByVal selvedge_ends As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(selvedge_ends) Then selvedge_ends = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WHOLE_ENDS_FROM_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_WHOLE_ENDS_FROM_DENSITY", _
        Array(CellsOf(ends_density), CellsOf(width), CellsOf(selvedge_ends), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WHOLE_ENDS_FROM_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_CLOTH_WIDTH_FROM_REED_WIDTH(ByVal reed_width As Variant, _
        ByVal weft_crimp As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CLOTH_WIDTH_FROM_REED_WIDTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CLOTH_WIDTH_FROM_REED_WIDTH", _
        Array(CellsOf(reed_width), CellsOf(weft_crimp), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CLOTH_WIDTH_FROM_REED_WIDTH = CVErr(xlErrValue)
End Function

Public Function WARP_REED_WIDTH_FROM_CLOTH_WIDTH(ByVal cloth_width As Variant, _
        ByVal weft_crimp As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_REED_WIDTH_FROM_CLOTH_WIDTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_REED_WIDTH_FROM_CLOTH_WIDTH", _
        Array(CellsOf(cloth_width), CellsOf(weft_crimp), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_REED_WIDTH_FROM_CLOTH_WIDTH = CVErr(xlErrValue)
End Function

Public Function WARP_WARP_AREAL_MASS(ByVal ends_density As Variant, _
        ByVal linear_density As Variant, ByVal crimp As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WARP_AREAL_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_WARP_AREAL_MASS", _
        Array(CellsOf(ends_density), CellsOf(linear_density), CellsOf(crimp), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WARP_AREAL_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_WEFT_AREAL_MASS(ByVal picks_density As Variant, _
        ByVal linear_density As Variant, ByVal weft_crimp As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WEFT_AREAL_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_WEFT_AREAL_MASS", _
        Array(CellsOf(picks_density), CellsOf(linear_density), CellsOf(weft_crimp), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WEFT_AREAL_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_LOOM_STATE_AREAL_MASS(ByVal warp_areal_mass As Variant, _
        ByVal weft_areal_mass As Variant, ByVal size_add_on As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOOM_STATE_AREAL_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOOM_STATE_AREAL_MASS", _
        Array(CellsOf(warp_areal_mass), CellsOf(weft_areal_mass), CellsOf(size_add_on), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOOM_STATE_AREAL_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_FINISHED_AREAL_MASS(ByVal loom_state_areal_mass As Variant, _
        ByVal desize_loss As Variant, ByVal finishing_loss As Variant, _
        ByVal finishing_add_on As Variant, ByVal shrinkage_length As Variant, _
        ByVal shrinkage_width As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FINISHED_AREAL_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_FINISHED_AREAL_MASS", _
        Array(CellsOf(loom_state_areal_mass), CellsOf(desize_loss), CellsOf(finishing_loss), _
        CellsOf(finishing_add_on), CellsOf(shrinkage_length), CellsOf(shrinkage_width), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FINISHED_AREAL_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_AREAL_MASS_IN_OUNCES(ByVal areal_mass As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_AREAL_MASS_IN_OUNCES = XLPy.CallUDF(PYTHON_MODULE, "WARP_AREAL_MASS_IN_OUNCES", _
        Array(CellsOf(areal_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_AREAL_MASS_IN_OUNCES = CVErr(xlErrValue)
End Function

Public Function WARP_AREAL_MASS_FROM_OUNCES(ByVal areal_mass_ounces As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_AREAL_MASS_FROM_OUNCES = XLPy.CallUDF(PYTHON_MODULE, "WARP_AREAL_MASS_FROM_OUNCES", _
        Array(CellsOf(areal_mass_ounces), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_AREAL_MASS_FROM_OUNCES = CVErr(xlErrValue)
End Function

Public Function WARP_WARP_LENGTH_FROM_CLOTH_LENGTH(ByVal cloth_length As Variant, _
        ByVal crimp As Variant, Optional ByVal warp_waste As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(warp_waste) Then warp_waste = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WARP_LENGTH_FROM_CLOTH_LENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_WARP_LENGTH_FROM_CLOTH_LENGTH", _
        Array(CellsOf(cloth_length), CellsOf(crimp), CellsOf(warp_waste), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WARP_LENGTH_FROM_CLOTH_LENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_CLOTH_LENGTH_FROM_WARP_LENGTH(ByVal warp_length As Variant, _
        ByVal crimp As Variant, Optional ByVal warp_waste As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(warp_waste) Then warp_waste = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CLOTH_LENGTH_FROM_WARP_LENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CLOTH_LENGTH_FROM_WARP_LENGTH", _
        Array(CellsOf(warp_length), CellsOf(crimp), CellsOf(warp_waste), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CLOTH_LENGTH_FROM_WARP_LENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_LOOM_STATE_LENGTH_FROM_FINISHED(ByVal finished_length As Variant, _
        ByVal shrinkage_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOOM_STATE_LENGTH_FROM_FINISHED = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOOM_STATE_LENGTH_FROM_FINISHED", _
        Array(CellsOf(finished_length), CellsOf(shrinkage_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOOM_STATE_LENGTH_FROM_FINISHED = CVErr(xlErrValue)
End Function

Public Function WARP_FINISHED_LENGTH_FROM_LOOM_STATE(ByVal cloth_length As Variant, _
        ByVal shrinkage_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FINISHED_LENGTH_FROM_LOOM_STATE = XLPy.CallUDF(PYTHON_MODULE, "WARP_FINISHED_LENGTH_FROM_LOOM_STATE", _
        Array(CellsOf(cloth_length), CellsOf(shrinkage_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FINISHED_LENGTH_FROM_LOOM_STATE = CVErr(xlErrValue)
End Function

Public Function WARP_FINISHED_WIDTH_FROM_LOOM_STATE(ByVal cloth_width As Variant, _
        ByVal shrinkage_width As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FINISHED_WIDTH_FROM_LOOM_STATE = XLPy.CallUDF(PYTHON_MODULE, "WARP_FINISHED_WIDTH_FROM_LOOM_STATE", _
        Array(CellsOf(cloth_width), CellsOf(shrinkage_width), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FINISHED_WIDTH_FROM_LOOM_STATE = CVErr(xlErrValue)
End Function

Public Function WARP_LOOM_STATE_WIDTH_FROM_FINISHED(ByVal finished_width As Variant, _
        ByVal shrinkage_width As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOOM_STATE_WIDTH_FROM_FINISHED = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOOM_STATE_WIDTH_FROM_FINISHED", _
        Array(CellsOf(finished_width), CellsOf(shrinkage_width), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOOM_STATE_WIDTH_FROM_FINISHED = CVErr(xlErrValue)
End Function

Public Function WARP_WARP_MASS_PER_METRE(ByVal ends As Variant, ByVal linear_density As Variant, _
        ByVal crimp As Variant, ByVal warp_waste As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WARP_MASS_PER_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WARP_MASS_PER_METRE", _
        Array(CellsOf(ends), CellsOf(linear_density), CellsOf(crimp), CellsOf(warp_waste), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WARP_MASS_PER_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_WEFT_MASS_PER_METRE(ByVal picks_density As Variant, _
        ByVal reed_width As Variant, ByVal linear_density As Variant, ByVal weft_waste As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WEFT_MASS_PER_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WEFT_MASS_PER_METRE", _
        Array(CellsOf(picks_density), CellsOf(reed_width), CellsOf(linear_density), CellsOf(weft_waste), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WEFT_MASS_PER_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_WARP_MASS_PER_FINISHED_METRE(ByVal warp_mass_per_metre As Variant, _
        ByVal shrinkage_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WARP_MASS_PER_FINISHED_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WARP_MASS_PER_FINISHED_METRE", _
        Array(CellsOf(warp_mass_per_metre), CellsOf(shrinkage_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WARP_MASS_PER_FINISHED_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_WEFT_MASS_PER_FINISHED_METRE(ByVal weft_mass_per_metre As Variant, _
        ByVal shrinkage_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WEFT_MASS_PER_FINISHED_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WEFT_MASS_PER_FINISHED_METRE", _
        Array(CellsOf(weft_mass_per_metre), CellsOf(shrinkage_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WEFT_MASS_PER_FINISHED_METRE = CVErr(xlErrValue)
End Function

' Ropes, beams and sets
Private Sub DescribeGroup3()
    Describe "WARP_ROPES_FOR_ENDS", "Ropes, beams and sets: Ropes that a number of ends makes. Gives: ropes.", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "ends in one rope, or on one section beam of a sheet, 1 to 1000", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_ENDS_PER_ROPE", "Ropes, beams and sets: Ends in each rope, on average. Gives: ends per rope.", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "ropes of one warp or set, a whole number from 1 to 200", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_ENDS_FROM_ROPES", "Ropes, beams and sets: Ends in a number of equal ropes, or on the section beams made from them. Gives: ends.", _
        Array("ropes of one warp or set, a whole number from 1 to 200", _
        "ends in one rope, or on one section beam of a sheet, 1 to 1000", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_ROPE_MASS_PER_METRE", "Ropes, beams and sets: Mass of one metre of one rope. Gives: rope mass per metre [g/m].", _
        Array("ends in one rope, or on one section beam of a sheet, 1 to 1000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: g/m")
    Describe "WARP_WARP_SHEET_MASS_PER_METRE", "Ropes, beams and sets: Mass of one metre of the whole warp, as ropes or as a sheet. Gives: warp sheet mass per metre [g/m].", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "unit of the result; left out: g/m")
    Describe "WARP_SET_MASS", "Ropes, beams and sets: Grey yarn in one set. Gives: set mass [kg].", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "length of one set [m], 1 to 200,000 m", "unit of the result; left out: kg")
    Describe "WARP_SETS_SIDE_BY_SIDE", "Ropes, beams and sets: Sets that the range can run at once; 0 where one set has more ropes than the range has places. Gives: sets side by side.", _
        Array("ropes that the range can run side by side, or section beams in the creel of a sheet, a whole number from 1 to 200", _
        "ropes of one warp or set, a whole number from 1 to 200", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_SECTION_BEAMS", "Ropes, beams and sets: Section beams that a warp needs. Gives: section beams.", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "ends that one section beam takes, a whole number from 1 to 5000", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_SUBSETS_OF_BEAMS", "Ropes, beams and sets: Subsets that the section beams make; a last one with fewer beams counts as one. Gives: subsets.", _
        Array("section beams of the warp, a whole number from 1 to 200", _
        "section beams brought together into one warp, a whole number from 1 to 200", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_THROUGHPUT", "Ropes, beams and sets: Grey yarn through the range while it runs. Gives: throughput [kg/h].", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "speed of the range [m/min], 1 to 120 m/min", _
        "gain of length on the range, of the length fed [%], -5 to 15 %; left out: 0 %", _
        "unit of the result; left out: kg/h")
    Describe "WARP_MANNED_THROUGHPUT", "Ropes, beams and sets: Grey yarn through the range, per hour that it is manned. Gives: manned throughput [kg/h].", _
        Array("grey yarn through the range while it runs [kg/h], 0.1 to 50000 kg/h", _
        "running time, of the time manned; changeovers and listed stoppages come on top [%], 10 to 100 %", _
        "unit of the result; left out: kg/h")
    Describe "WARP_RUN_TIME", "Ropes, beams and sets: Time that the range is manned for a run. Gives: run time [h].", _
        Array("metres that the range runs [m], 0 to 100,000,000 m", _
        "speed of the range [m/min], 1 to 120 m/min", _
        "running time, of the time manned; changeovers and listed stoppages come on top [%], 10 to 100 %", _
        "unit of the result; left out: h")
    Describe "WARP_LENGTH_AFTER_STRETCH", "Ropes, beams and sets: Length of a warp behind one zone that stretches it; several zones follow one another. Gives: warp length [m].", _
        Array("length of warp [m], 0 to 100,000,000 m", _
        "gain of length on the range, of the length fed [%], -5 to 15 %", _
        "unit of the result; left out: m")
    Describe "WARP_LENGTH_BEFORE_STRETCH", "Ropes, beams and sets: Length that must be fed for a length delivered. Gives: warp length [m].", _
        Array("length of warp [m], 0 to 100,000,000 m", _
        "gain of length on the range, of the length fed [%], -5 to 15 %", _
        "unit of the result; left out: m")
    Describe "WARP_LINEAR_DENSITY_AFTER_STRETCH", "Ropes, beams and sets: Linear density of a yarn that was stretched. Gives: linear density [tex].", _
        Array("mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "gain of length on the range, of the length fed [%], -5 to 15 %", _
        "unit of the result; left out: tex")
    Describe "WARP_NUMBER_OF_SETS", "Ropes, beams and sets: Sets that a length of warp needs. Gives: number of sets.", _
        Array("length of warp [m], 0 to 100,000,000 m", "longest set that is warped [m], 100 to 200,000 m", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_RANGE_RUN_LENGTH", "Ropes, beams and sets: Metres that the range runs for an order, one set after the other. Gives: run length [m].", _
        Array("length of warp [m], 0 to 100,000,000 m", _
        "sets needed for the order, a whole number from 1 to 100,000", _
        "leader and tail run for each set, not saleable [m], 0 to 5000 m", _
        "off-shade metres at the start of each set, not saleable [m], 0 to 20000 m", _
        "unit of the result; left out: m")
    Describe "WARP_FIRST_QUALITY_SHARE", "Ropes, beams and sets: Share of the metres made that are of first quality. Gives: first quality [%].", _
        Array("metres off shade, of the metres made [%], 0 to 40 %", _
        "metres of second quality, of the metres made [%], 0 to 40 %", _
        "unit of the result; left out: %")
    Describe "WARP_LENGTH_TO_MAKE", "Ropes, beams and sets: Length to make so that enough of it is of first quality. Gives: made length [m].", _
        Array("length of first quality [m], 0 to 100,000,000 m", _
        "metres off shade, of the metres made [%], 0 to 40 %", _
        "metres of second quality, of the metres made [%], 0 to 40 %", _
        "unit of the result; left out: m")
End Sub

Public Function WARP_ROPES_FOR_ENDS(ByVal ends As Variant, ByVal ends_per_rope As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ROPES_FOR_ENDS = XLPy.CallUDF(PYTHON_MODULE, "WARP_ROPES_FOR_ENDS", _
        Array(CellsOf(ends), CellsOf(ends_per_rope), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ROPES_FOR_ENDS = CVErr(xlErrValue)
End Function

Public Function WARP_ENDS_PER_ROPE(ByVal ends As Variant, ByVal ropes As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ENDS_PER_ROPE = XLPy.CallUDF(PYTHON_MODULE, "WARP_ENDS_PER_ROPE", _
        Array(CellsOf(ends), CellsOf(ropes), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ENDS_PER_ROPE = CVErr(xlErrValue)
End Function

Public Function WARP_ENDS_FROM_ROPES(ByVal ropes As Variant, ByVal ends_per_rope As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ENDS_FROM_ROPES = XLPy.CallUDF(PYTHON_MODULE, "WARP_ENDS_FROM_ROPES", _
        Array(CellsOf(ropes), CellsOf(ends_per_rope), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ENDS_FROM_ROPES = CVErr(xlErrValue)
End Function

Public Function WARP_ROPE_MASS_PER_METRE(ByVal ends_per_rope As Variant, _
        ByVal linear_density As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ROPE_MASS_PER_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_ROPE_MASS_PER_METRE", _
        Array(CellsOf(ends_per_rope), CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ROPE_MASS_PER_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_WARP_SHEET_MASS_PER_METRE(ByVal ends As Variant, _
        ByVal linear_density As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WARP_SHEET_MASS_PER_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WARP_SHEET_MASS_PER_METRE", _
        Array(CellsOf(ends), CellsOf(linear_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WARP_SHEET_MASS_PER_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_SET_MASS(ByVal ends As Variant, ByVal linear_density As Variant, _
        ByVal set_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SET_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_SET_MASS", _
        Array(CellsOf(ends), CellsOf(linear_density), CellsOf(set_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SET_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_SETS_SIDE_BY_SIDE(ByVal rope_places As Variant, ByVal ropes As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SETS_SIDE_BY_SIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SETS_SIDE_BY_SIDE", _
        Array(CellsOf(rope_places), CellsOf(ropes), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SETS_SIDE_BY_SIDE = CVErr(xlErrValue)
End Function

Public Function WARP_SECTION_BEAMS(ByVal ends As Variant, ByVal creel_capacity As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SECTION_BEAMS = XLPy.CallUDF(PYTHON_MODULE, "WARP_SECTION_BEAMS", _
        Array(CellsOf(ends), CellsOf(creel_capacity), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SECTION_BEAMS = CVErr(xlErrValue)
End Function

Public Function WARP_SUBSETS_OF_BEAMS(ByVal section_beams As Variant, _
        ByVal beams_per_subset As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SUBSETS_OF_BEAMS = XLPy.CallUDF(PYTHON_MODULE, "WARP_SUBSETS_OF_BEAMS", _
        Array(CellsOf(section_beams), CellsOf(beams_per_subset), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SUBSETS_OF_BEAMS = CVErr(xlErrValue)
End Function

Public Function WARP_THROUGHPUT(ByVal ends As Variant, ByVal linear_density As Variant, _
        ByVal speed As Variant, Optional ByVal stretch As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(stretch) Then stretch = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_THROUGHPUT = XLPy.CallUDF(PYTHON_MODULE, "WARP_THROUGHPUT", _
        Array(CellsOf(ends), CellsOf(linear_density), CellsOf(speed), CellsOf(stretch), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_THROUGHPUT = CVErr(xlErrValue)
End Function

Public Function WARP_MANNED_THROUGHPUT(ByVal throughput As Variant, ByVal efficiency As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MANNED_THROUGHPUT = XLPy.CallUDF(PYTHON_MODULE, "WARP_MANNED_THROUGHPUT", _
        Array(CellsOf(throughput), CellsOf(efficiency), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MANNED_THROUGHPUT = CVErr(xlErrValue)
End Function

Public Function WARP_RUN_TIME(ByVal run_length As Variant, ByVal speed As Variant, _
        ByVal efficiency As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RUN_TIME = XLPy.CallUDF(PYTHON_MODULE, "WARP_RUN_TIME", _
        Array(CellsOf(run_length), CellsOf(speed), CellsOf(efficiency), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RUN_TIME = CVErr(xlErrValue)
End Function

Public Function WARP_LENGTH_AFTER_STRETCH(ByVal warp_length As Variant, ByVal stretch As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LENGTH_AFTER_STRETCH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LENGTH_AFTER_STRETCH", _
        Array(CellsOf(warp_length), CellsOf(stretch), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LENGTH_AFTER_STRETCH = CVErr(xlErrValue)
End Function

Public Function WARP_LENGTH_BEFORE_STRETCH(ByVal warp_length As Variant, ByVal stretch As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LENGTH_BEFORE_STRETCH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LENGTH_BEFORE_STRETCH", _
        Array(CellsOf(warp_length), CellsOf(stretch), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LENGTH_BEFORE_STRETCH = CVErr(xlErrValue)
End Function

Public Function WARP_LINEAR_DENSITY_AFTER_STRETCH(ByVal linear_density As Variant, _
        ByVal stretch As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LINEAR_DENSITY_AFTER_STRETCH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LINEAR_DENSITY_AFTER_STRETCH", _
        Array(CellsOf(linear_density), CellsOf(stretch), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LINEAR_DENSITY_AFTER_STRETCH = CVErr(xlErrValue)
End Function

Public Function WARP_NUMBER_OF_SETS(ByVal warp_length As Variant, ByVal set_length_max As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_NUMBER_OF_SETS = XLPy.CallUDF(PYTHON_MODULE, "WARP_NUMBER_OF_SETS", _
        Array(CellsOf(warp_length), CellsOf(set_length_max), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_NUMBER_OF_SETS = CVErr(xlErrValue)
End Function

Public Function WARP_RANGE_RUN_LENGTH(ByVal warp_length As Variant, _
        ByVal number_of_sets As Variant, ByVal leader_length As Variant, _
        ByVal off_shade_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RANGE_RUN_LENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_RANGE_RUN_LENGTH", _
        Array(CellsOf(warp_length), CellsOf(number_of_sets), CellsOf(leader_length), _
        CellsOf(off_shade_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RANGE_RUN_LENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_FIRST_QUALITY_SHARE(ByVal off_shade_share As Variant, _
        ByVal seconds_share As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FIRST_QUALITY_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_FIRST_QUALITY_SHARE", _
        Array(CellsOf(off_shade_share), CellsOf(seconds_share), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FIRST_QUALITY_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_LENGTH_TO_MAKE(ByVal first_quality_length As Variant, _
        ByVal off_shade_share As Variant, ByVal seconds_share As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LENGTH_TO_MAKE = XLPy.CallUDF(PYTHON_MODULE, "WARP_LENGTH_TO_MAKE", _
        Array(CellsOf(first_quality_length), CellsOf(off_shade_share), CellsOf(seconds_share), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LENGTH_TO_MAKE = CVErr(xlErrValue)
End Function

' Liquors, strength and rinsing
Private Sub DescribeGroup4()
    Describe "WARP_CARRIED_BY_LIQUOR", "Liquors, strength and rinsing: Amount that the liquor on the yarn carries. Gives: carried [g/kg].", _
        Array("liquor on the yarn behind the squeeze [L/kg], 0.2 to 3 L/kg", _
        "concentration of a liquor [g/L], 0 to 1000 g/L", "unit of the result; left out: g/kg")
    Describe "WARP_BATH_STRENGTH_FOR_ADD_ON", "Liquors, strength and rinsing: Bath concentration that leaves a wanted amount on dry yarn or cloth. Gives: concentration [g/L].", _
        Array("carried by the liquor on the yarn [g/kg], 0 to 3000 g/kg", _
        "liquor on the yarn behind the squeeze [L/kg], 0.2 to 3 L/kg", _
        "unit of the result; left out: g/L")
    Describe "WARP_IMPREGNATION_USE", "Liquors, strength and rinsing: Amount that a box gives to the yarn that runs through it. Gives: carried [g/kg].", _
        Array("liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "concentration of the liquor on the entering yarn [g/L], 0 to 1000 g/L", _
        "liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "concentration of the liquor on the leaving yarn [g/L], 0 to 1000 g/L", _
        "unit of the result; left out: g/kg")
    Describe "WARP_OVERFLOW_VOLUME", "Liquors, strength and rinsing: Liquor that leaves over the weir because more comes in than the yarn takes away. Gives: overflow [L/kg].", _
        Array("liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "liquor fed to the bath [L/kg], 0 to 50 L/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "water evaporated from the yarn in all skies [L/kg], 0 to 2 L/kg", _
        "unit of the result; left out: L/kg")
    Describe "WARP_MAKE_UP_VOLUME", "Liquors, strength and rinsing: Water that holds the level where the yarn takes away more than comes in. Gives: make up water [L/kg].", _
        Array("liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "liquor fed to the bath [L/kg], 0 to 50 L/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "water evaporated from the yarn in all skies [L/kg], 0 to 2 L/kg", _
        "unit of the result; left out: L/kg")
    Describe "WARP_CONCENTRATION_AFTER_BOX", "Liquors, strength and rinsing: Concentration of the liquor on the yarn behind one box. Gives: concentration out [g/L].", _
        Array("concentration of the liquor on the entering yarn [g/L], 0 to 1000 g/L", _
        "concentration of a liquor [g/L], 0 to 1000 g/L", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "unit of the result; left out: g/L")
    Describe "WARP_RESIDUE_AFTER_BOXES", "Liquors, strength and rinsing: Share of the first liquor still on the yarn behind a row of boxes of clean water. Gives: residue [%].", _
        Array("boxes in series, or passes through one box, a whole number from 1 to 20", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "unit of the result; left out: %")
    Describe "WARP_RINSE_RESIDUE_COUNTER_CURRENT", "Liquors, strength and rinsing: Share left on the yarn behind boxes whose water runs against the yarn. Gives: residue [%].", _
        Array("fresh water to the rinse boxes [L/kg], 0.1 to 200 L/kg", _
        "liquor on the yarn behind the squeeze [L/kg], 0.2 to 3 L/kg", _
        "boxes in series, or passes through one box, a whole number from 1 to 20", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "unit of the result; left out: %")
    Describe "WARP_RINSE_RESIDUE_SEPARATE_FEEDS", "Liquors, strength and rinsing: Share left on the yarn behind boxes that each take an equal part of the water. Gives: residue [%].", _
        Array("fresh water to the rinse boxes [L/kg], 0.1 to 200 L/kg", _
        "liquor on the yarn behind the squeeze [L/kg], 0.2 to 3 L/kg", _
        "boxes in series, or passes through one box, a whole number from 1 to 20", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "unit of the result; left out: %")
    Describe "WARP_DELIVERED_FROM_PURE", "Liquors, strength and rinsing: Mass of product to buy for a mass of pure substance. Gives: delivered mass [kg].", _
        Array("mass of pure substance [kg], 0 to 1,000,000,000 kg", _
        "pure substance in the product as delivered (assay) [%], 1 to 100 %", _
        "unit of the result; left out: kg")
    Describe "WARP_VOLUME_FROM_MASS", "Liquors, strength and rinsing: Volume of a mass of product. Gives: solution volume [L].", _
        Array("mass of product as delivered [kg], 0 to 10,000,000,000 kg", _
        "density of the product [kg/L], 0.5 to 3 kg/L", "unit of the result; left out: L")
    Describe "WARP_STRENGTH_PER_VOLUME", "Liquors, strength and rinsing: Pure substance in each litre of a product. Gives: concentration [g/L].", _
        Array("pure substance in the product as delivered (assay) [%], 1 to 100 %", _
        "density of the product [kg/L], 0.5 to 3 kg/L", "unit of the result; left out: g/L")
    Describe "WARP_STRENGTH_BY_MASS", "Liquors, strength and rinsing: Share of pure substance in the mass of a solution, from what each litre of it holds. Gives: strength [%].", _
        Array("concentration of a liquor [g/L], 0 to 1000 g/L", _
        "density of the product [kg/L], 0.5 to 3 kg/L", "unit of the result; left out: %")
    Describe "WARP_TANK_TURNOVER_TIME", "Liquors, strength and rinsing: Time in which the circulation moves the whole volume once. Gives: turnover time [min].", _
        Array("volume of the tank or bath [L], 1 to 1,000,000 L", _
        "flow of liquor [L/min], 0 to 100,000 L/min", "unit of the result; left out: min")
End Sub

Public Function WARP_CARRIED_BY_LIQUOR(ByVal pick_up As Variant, ByVal concentration As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CARRIED_BY_LIQUOR = XLPy.CallUDF(PYTHON_MODULE, "WARP_CARRIED_BY_LIQUOR", _
        Array(CellsOf(pick_up), CellsOf(concentration), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CARRIED_BY_LIQUOR = CVErr(xlErrValue)
End Function

Public Function WARP_BATH_STRENGTH_FOR_ADD_ON(ByVal carried As Variant, ByVal pick_up As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BATH_STRENGTH_FOR_ADD_ON = XLPy.CallUDF(PYTHON_MODULE, "WARP_BATH_STRENGTH_FOR_ADD_ON", _
        Array(CellsOf(carried), CellsOf(pick_up), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BATH_STRENGTH_FOR_ADD_ON = CVErr(xlErrValue)
End Function

Public Function WARP_IMPREGNATION_USE(ByVal pick_up_in As Variant, _
        ByVal concentration_in As Variant, ByVal pick_up_out As Variant, _
        ByVal concentration_out As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_IMPREGNATION_USE = XLPy.CallUDF(PYTHON_MODULE, "WARP_IMPREGNATION_USE", _
        Array(CellsOf(pick_up_in), CellsOf(concentration_in), CellsOf(pick_up_out), _
        CellsOf(concentration_out), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_IMPREGNATION_USE = CVErr(xlErrValue)
End Function

Public Function WARP_OVERFLOW_VOLUME(ByVal pick_up_in As Variant, ByVal feed_volume As Variant, _
        ByVal pick_up_last As Variant, ByVal sky_evaporation As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_OVERFLOW_VOLUME = XLPy.CallUDF(PYTHON_MODULE, "WARP_OVERFLOW_VOLUME", _
        Array(CellsOf(pick_up_in), CellsOf(feed_volume), CellsOf(pick_up_last), CellsOf(sky_evaporation), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_OVERFLOW_VOLUME = CVErr(xlErrValue)
End Function

Public Function WARP_MAKE_UP_VOLUME(ByVal pick_up_in As Variant, ByVal feed_volume As Variant, _
        ByVal pick_up_last As Variant, ByVal sky_evaporation As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MAKE_UP_VOLUME = XLPy.CallUDF(PYTHON_MODULE, "WARP_MAKE_UP_VOLUME", _
        Array(CellsOf(pick_up_in), CellsOf(feed_volume), CellsOf(pick_up_last), CellsOf(sky_evaporation), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MAKE_UP_VOLUME = CVErr(xlErrValue)
End Function

Public Function WARP_CONCENTRATION_AFTER_BOX(ByVal concentration_in As Variant, _
        ByVal concentration As Variant, ByVal exchange As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATION_AFTER_BOX = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATION_AFTER_BOX", _
        Array(CellsOf(concentration_in), CellsOf(concentration), CellsOf(exchange), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATION_AFTER_BOX = CVErr(xlErrValue)
End Function

Public Function WARP_RESIDUE_AFTER_BOXES(ByVal boxes As Variant, ByVal exchange As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RESIDUE_AFTER_BOXES = XLPy.CallUDF(PYTHON_MODULE, "WARP_RESIDUE_AFTER_BOXES", _
        Array(CellsOf(boxes), CellsOf(exchange), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RESIDUE_AFTER_BOXES = CVErr(xlErrValue)
End Function

Public Function WARP_RINSE_RESIDUE_COUNTER_CURRENT(ByVal rinse_water As Variant, _
        ByVal pick_up As Variant, ByVal boxes As Variant, ByVal exchange As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RINSE_RESIDUE_COUNTER_CURRENT = XLPy.CallUDF(PYTHON_MODULE, "WARP_RINSE_RESIDUE_COUNTER_CURRENT", _
        Array(CellsOf(rinse_water), CellsOf(pick_up), CellsOf(boxes), CellsOf(exchange), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RINSE_RESIDUE_COUNTER_CURRENT = CVErr(xlErrValue)
End Function

Public Function WARP_RINSE_RESIDUE_SEPARATE_FEEDS(ByVal rinse_water As Variant, _
        ByVal pick_up As Variant, ByVal boxes As Variant, ByVal exchange As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RINSE_RESIDUE_SEPARATE_FEEDS = XLPy.CallUDF(PYTHON_MODULE, "WARP_RINSE_RESIDUE_SEPARATE_FEEDS", _
        Array(CellsOf(rinse_water), CellsOf(pick_up), CellsOf(boxes), CellsOf(exchange), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RINSE_RESIDUE_SEPARATE_FEEDS = CVErr(xlErrValue)
End Function

Public Function WARP_DELIVERED_FROM_PURE(ByVal pure_mass As Variant, ByVal strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DELIVERED_FROM_PURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_DELIVERED_FROM_PURE", _
        Array(CellsOf(pure_mass), CellsOf(strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DELIVERED_FROM_PURE = CVErr(xlErrValue)
End Function

Public Function WARP_VOLUME_FROM_MASS(ByVal delivered_mass As Variant, ByVal density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VOLUME_FROM_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_VOLUME_FROM_MASS", _
        Array(CellsOf(delivered_mass), CellsOf(density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VOLUME_FROM_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_STRENGTH_PER_VOLUME(ByVal strength As Variant, ByVal density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STRENGTH_PER_VOLUME = XLPy.CallUDF(PYTHON_MODULE, "WARP_STRENGTH_PER_VOLUME", _
        Array(CellsOf(strength), CellsOf(density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STRENGTH_PER_VOLUME = CVErr(xlErrValue)
End Function

Public Function WARP_STRENGTH_BY_MASS(ByVal concentration As Variant, ByVal density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STRENGTH_BY_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_STRENGTH_BY_MASS", _
        Array(CellsOf(concentration), CellsOf(density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STRENGTH_BY_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_TANK_TURNOVER_TIME(ByVal tank_volume As Variant, ByVal flow As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_TANK_TURNOVER_TIME = XLPy.CallUDF(PYTHON_MODULE, "WARP_TANK_TURNOVER_TIME", _
        Array(CellsOf(tank_volume), CellsOf(flow), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_TANK_TURNOVER_TIME = CVErr(xlErrValue)
End Function

' Caustic lye by density
Private Sub DescribeGroup5()
    Describe "WARP_LYE_DENSITY_FROM_STRENGTH", "Caustic lye by density: Density of caustic lye at 25 degC. Gives: lye density [kg/L].", _
        Array("caustic (NaOH) in the lye, by mass [%], 0 to 50 %", "unit of the result; left out: kg/L")
    Describe "WARP_LYE_STRENGTH_FROM_DENSITY", "Caustic lye by density: Strength by mass of caustic lye of 25 degC. Gives: lye strength [%].", _
        Array("density of the lye at 25 degC [kg/L], 0.99705 to 1.5217 kg/L", _
        "unit of the result; left out: %")
    Describe "WARP_LYE_CONCENTRATION_FROM_STRENGTH", "Caustic lye by density: Caustic in a litre of lye of 25 degC. Gives: lye concentration [g/L].", _
        Array("caustic (NaOH) in the lye, by mass [%], 0 to 50 %", "unit of the result; left out: g/L")
    Describe "WARP_LYE_STRENGTH_FROM_CONCENTRATION", "Caustic lye by density: Strength by mass of lye of so much caustic in a litre of 25 degC. Gives: lye strength [%].", _
        Array("caustic (NaOH 100 %) in each litre of the lye [g/L], 0 to 760.85 g/L", _
        "unit of the result; left out: %")
    Describe "WARP_SPECIFIC_GRAVITY_FROM_DENSITY", "Caustic lye by density: Specific gravity that a hydrometer for 60 degF shows, its glass left out of account. Gives: specific gravity.", _
        Array("density of the lye at 25 degC [kg/L], 0.99705 to 1.5217 kg/L", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_LYE_DENSITY_FROM_SPECIFIC_GRAVITY", "Caustic lye by density: Density of the lye in which a hydrometer for 60 degF shows so much, its glass left out of account. Gives: lye density [kg/L].", _
        Array("mass of a liquid over that of as much water of 60 degF, 1 to 2", _
        "unit of the result; left out: kg/L")
    Describe "WARP_SPECIFIC_GRAVITY_FROM_BAUME", "Caustic lye by density: Specific gravity from degrees Baume, the scale of modulus 145 for liquids heavier than water. Gives: specific gravity.", _
        Array("degrees Baume for liquids heavier than water, 145 - 145/d, d at 60 degF, 0 to 72.5", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_BAUME_FROM_SPECIFIC_GRAVITY", "Caustic lye by density: Degrees Baume from specific gravity, the scale of modulus 145 for liquids heavier than water. Gives: baume.", _
        Array("mass of a liquid over that of as much water of 60 degF, 1 to 2", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_SPECIFIC_GRAVITY_FROM_TWADDELL", "Caustic lye by density: Specific gravity from degrees Twaddell. Gives: specific gravity.", _
        Array("degrees Twaddell: 200 times what the specific gravity has above 1, 0 to 200", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_TWADDELL_FROM_SPECIFIC_GRAVITY", "Caustic lye by density: Degrees Twaddell from specific gravity. Gives: twaddell.", _
        Array("mass of a liquid over that of as much water of 60 degF, 1 to 2", _
        "unit of the result; left out: none, a pure number")
End Sub

Public Function WARP_LYE_DENSITY_FROM_STRENGTH(ByVal lye_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LYE_DENSITY_FROM_STRENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LYE_DENSITY_FROM_STRENGTH", _
        Array(CellsOf(lye_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LYE_DENSITY_FROM_STRENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_LYE_STRENGTH_FROM_DENSITY(ByVal lye_density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LYE_STRENGTH_FROM_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_LYE_STRENGTH_FROM_DENSITY", _
        Array(CellsOf(lye_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LYE_STRENGTH_FROM_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_LYE_CONCENTRATION_FROM_STRENGTH(ByVal lye_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LYE_CONCENTRATION_FROM_STRENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LYE_CONCENTRATION_FROM_STRENGTH", _
        Array(CellsOf(lye_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LYE_CONCENTRATION_FROM_STRENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_LYE_STRENGTH_FROM_CONCENTRATION(ByVal lye_concentration As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LYE_STRENGTH_FROM_CONCENTRATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_LYE_STRENGTH_FROM_CONCENTRATION", _
        Array(CellsOf(lye_concentration), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LYE_STRENGTH_FROM_CONCENTRATION = CVErr(xlErrValue)
End Function

Public Function WARP_SPECIFIC_GRAVITY_FROM_DENSITY(ByVal lye_density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SPECIFIC_GRAVITY_FROM_DENSITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_SPECIFIC_GRAVITY_FROM_DENSITY", _
        Array(CellsOf(lye_density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SPECIFIC_GRAVITY_FROM_DENSITY = CVErr(xlErrValue)
End Function

Public Function WARP_LYE_DENSITY_FROM_SPECIFIC_GRAVITY(ByVal specific_gravity As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LYE_DENSITY_FROM_SPECIFIC_GRAVITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_LYE_DENSITY_FROM_SPECIFIC_GRAVITY", _
        Array(CellsOf(specific_gravity), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LYE_DENSITY_FROM_SPECIFIC_GRAVITY = CVErr(xlErrValue)
End Function

Public Function WARP_SPECIFIC_GRAVITY_FROM_BAUME(ByVal baume As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SPECIFIC_GRAVITY_FROM_BAUME = XLPy.CallUDF(PYTHON_MODULE, "WARP_SPECIFIC_GRAVITY_FROM_BAUME", _
        Array(CellsOf(baume), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SPECIFIC_GRAVITY_FROM_BAUME = CVErr(xlErrValue)
End Function

Public Function WARP_BAUME_FROM_SPECIFIC_GRAVITY(ByVal specific_gravity As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BAUME_FROM_SPECIFIC_GRAVITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_BAUME_FROM_SPECIFIC_GRAVITY", _
        Array(CellsOf(specific_gravity), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BAUME_FROM_SPECIFIC_GRAVITY = CVErr(xlErrValue)
End Function

Public Function WARP_SPECIFIC_GRAVITY_FROM_TWADDELL(ByVal twaddell As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SPECIFIC_GRAVITY_FROM_TWADDELL = XLPy.CallUDF(PYTHON_MODULE, "WARP_SPECIFIC_GRAVITY_FROM_TWADDELL", _
        Array(CellsOf(twaddell), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SPECIFIC_GRAVITY_FROM_TWADDELL = CVErr(xlErrValue)
End Function

Public Function WARP_TWADDELL_FROM_SPECIFIC_GRAVITY(ByVal specific_gravity As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_TWADDELL_FROM_SPECIFIC_GRAVITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_TWADDELL_FROM_SPECIFIC_GRAVITY", _
        Array(CellsOf(specific_gravity), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_TWADDELL_FROM_SPECIFIC_GRAVITY = CVErr(xlErrValue)
End Function

' Reduction chemistry
Private Sub DescribeGroup6()
    Describe "WARP_INDIGO_FEED_OF_BATH", "Reduction chemistry: Indigo that the bath must be fed. Gives: indigo feed [g/kg].", _
        Array("shade: indigo on the finished yarn, of the grey yarn [%], 0.05 to 12 %", _
        "share of the applied indigo that is lost in rinsing [%], 0 to 60 %", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg", _
        "indigo in the dye bath [g/L], 0.05 to 30 g/L", "unit of the result; left out: g/kg")
    Describe "WARP_INDIGO_FEED_FROM_VOLUMES", "Reduction chemistry: Indigo that the bath must be fed while it overflows, straight from the volume balance. Gives: indigo feed [g/kg].", _
        Array("shade: indigo on the finished yarn, of the grey yarn [%], 0.05 to 12 %", _
        "share of the applied indigo that is lost in rinsing [%], 0 to 60 %", _
        "indigo in the dye bath [g/L], 0.05 to 30 g/L", _
        "indigo in the stock vat or feed [g/L], 5 to 500 g/L", _
        "liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "water evaporated from the yarn in all skies [L/kg], 0 to 2 L/kg", _
        "liquor fed beside the stock vat [L/kg], 0 to 50 L/kg; left out: 0 L/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_FOR_REDUCTION", "Reduction chemistry: Hydrosulfite (100 %) that reduces the indigo fed. Gives: hydrosulfite use [g/kg].", _
        Array("indigo fed to the bath [g/kg], 0 to 300 g/kg", _
        "share of the indigo that is delivered already reduced [%], 0 to 100 %; left out: 0 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_FOR_SECOND_REDUCTION", "Reduction chemistry: Hydrosulfite (100 %) that reduces once more the indigo that dissolves back. Gives: hydrosulfite use [g/kg].", _
        Array("indigo fed to the bath [g/kg], 0 to 300 g/kg", _
        "share of the applied indigo that dissolves back and is reduced again [%], 0 to 50 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_CARRIED_OUT", "Reduction chemistry: Hydrosulfite (100 %) lost on the yarn: in every sky, and behind the last box for good. Gives: hydrosulfite use [g/kg].", _
        Array("dip boxes used, or passes through one box, a whole number from 1 to 24", _
        "liquor on the yarn behind the squeeze [L/kg], 0.2 to 3 L/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "share of the carried hydrosulfite that one sky destroys [%], 0 to 100 %", _
        "hydrosulfite (100 %) in the dye bath [g/L], 0 to 20 g/L", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_AT_BATH_SURFACE", "Reduction chemistry: Hydrosulfite (100 %) destroyed by the air above the open baths. Gives: hydrosulfite use [g/kg].", _
        Array("hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "oxygen that the open bath surface takes up [g/m2/h], 0 to 100 g/m2/h", _
        "open surface of all dye boxes and tanks [m2], 0 to 500 m2", _
        "grey yarn through the range while it runs [kg/h], 0.1 to 50000 kg/h", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_IN_CIRCULATION", "Reduction chemistry: Hydrosulfite (100 %) destroyed by the oxygen that weirs and returns beat into the liquor. Gives: hydrosulfite use [g/kg].", _
        Array("hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "oxygen picked up by each volume circulated [g/m3], 0 to 20 g/m3", _
        "liquor circulated through all boxes [m3/h], 0 to 2000 m3/h", _
        "grey yarn through the range while it runs [kg/h], 0.1 to 50000 kg/h", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_BY_ENTRAINED_AIR", "Reduction chemistry: Hydrosulfite (100 %) destroyed by the air that dry yarn brings into the first dip. Gives: hydrosulfite use [g/kg].", _
        Array("hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "air held by the dry yarn [L/kg], 0 to 5 L/kg", "oxygen in air [g/L], 0 to 0.4 g/L", _
        "share of the air driven out before the first dip [%], 0 to 100 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_BY_DECAY", "Reduction chemistry: Hydrosulfite (100 %) that decomposes in the bath without oxygen. Gives: hydrosulfite use [g/kg].", _
        Array("hydrosulfite lost without oxygen, of what the bath holds [%/h], 0 to 100 %/h", _
        "liquor in all boxes, pipes and the mixing tank [L], 10 to 200,000 L", _
        "hydrosulfite (100 %) in the dye bath [g/L], 0 to 20 g/L", _
        "grey yarn through the range while it runs [kg/h], 0.1 to 50000 kg/h", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFITE_OF_STOPPAGE", "Reduction chemistry: Hydrosulfite (100 %) that the standing bath loses in one stoppage. Gives: lot amount [kg].", _
        Array("length of one stoppage [h], 0 to 100 h", _
        "hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "oxygen that the open bath surface takes up [g/m2/h], 0 to 100 g/m2/h", _
        "open surface of all dye boxes and tanks [m2], 0 to 500 m2", _
        "oxygen picked up by each volume circulated [g/m3], 0 to 20 g/m3", _
        "liquor circulated through all boxes [m3/h], 0 to 2000 m3/h", _
        "hydrosulfite lost without oxygen, of what the bath holds [%/h], 0 to 100 %/h", _
        "liquor in all boxes, pipes and the mixing tank [L], 10 to 200,000 L", _
        "hydrosulfite (100 %) in the dye bath [g/L], 0 to 20 g/L", _
        "unit of the result; left out: kg")
    Describe "WARP_CAUSTIC_FEED_OF_BATH", "Reduction chemistry: Caustic (NaOH 100 %) that the bath must be fed: a sodium balance, free of any pH. Gives: caustic use [g/kg].", _
        Array("hydrosulfite (100 %) used [g/kg], 0 to 3000 g/kg", _
        "hydrosulfite (100 %) that overflows [g/kg], 0 to 3000 g/kg", _
        "hydrosulfite (100 %) that decomposes without oxygen [g/kg], 0 to 3000 g/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg", _
        "free caustic (NaOH 100 %) in the dye bath [g/L], 0 to 100 g/L", _
        "carbon dioxide taken up by the yarn's liquor in all skies [g/kg], 0 to 20 g/kg", _
        "caustic (NaOH 100 %) that the yarn brings [g/kg], 0 to 3000 g/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SHARE_ENDING_HALF_AS_SULFATE", "Reduction chemistry: Share of the destroyed hydrosulfite that goes by route A. Gives: route share [%].", _
        Array("hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "unit of the result; left out: %")
    Describe "WARP_SULFITE_FROM_HYDROSULFITE", "Reduction chemistry: Sodium sulfite formed by vatting and by oxygen. Gives: sulfite formed [g/kg].", _
        Array("hydrosulfite (100 %) that reduces dye [g/kg], 0 to 3000 g/kg", _
        "hydrosulfite (100 %) that oxygen destroys [g/kg], 0 to 3000 g/kg", _
        "hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SULFATE_FROM_HYDROSULFITE", "Reduction chemistry: Sodium sulfate formed by oxygen. Gives: sulfate formed [g/kg].", _
        Array("hydrosulfite (100 %) that oxygen destroys [g/kg], 0 to 3000 g/kg", _
        "hydrosulfite that one oxygen destroys [mol/mol], 1 to 2 mol/mol", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SALT_IN_BATH", "Reduction chemistry: Sodium sulfite and sulfate that stand in the bath once it is steady. Gives: salt concentration [g/L].", _
        Array("sodium sulfite formed [g/kg], 0 to 3000 g/kg", _
        "sodium sulfate formed [g/kg], 0 to 3000 g/kg", _
        "liquor on the yarn behind the last squeeze of the dye boxes [L/kg], 0.2 to 3 L/kg", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg", _
        "unit of the result; left out: g/L")
    Describe "WARP_ELECTROLYSIS_ENERGY_OF_INDIGO", "Reduction chemistry: Electric energy that reduces indigo at an electrode. Gives: electrolysis energy [kWh/kg].", _
        Array("voltage over the whole cell [V], 0.1 to 50 V", _
        "share of the current that ends in reduced dye [%], 1 to 100 %", _
        "unit of the result; left out: kWh/kg")
    Describe "WARP_LEUCO_ACID_SHARE", "Reduction chemistry: Share of the reduced indigo that is the undissolved acid. Gives: leuco share [%].", _
        Array("pH, 0 to 14", _
        "pH at which half of the leuco acid is the single salt, 0 to 14; left out: 7.97", _
        "pH at which half of the single salt is the double salt, 0 to 16; left out: 12.68", _
        "unit of the result; left out: %")
    Describe "WARP_LEUCO_SINGLE_SALT_SHARE", "Reduction chemistry: Share of the reduced indigo that is the mono-sodium salt, the form with most affinity. Gives: leuco share [%].", _
        Array("pH, 0 to 14", _
        "pH at which half of the leuco acid is the single salt, 0 to 14; left out: 7.97", _
        "pH at which half of the single salt is the double salt, 0 to 16; left out: 12.68", _
        "unit of the result; left out: %")
End Sub

Public Function WARP_INDIGO_FEED_OF_BATH(ByVal indigo_on_yarn As Variant, _
        ByVal rinse_loss As Variant, ByVal overflow As Variant, ByVal bath_indigo As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_INDIGO_FEED_OF_BATH = XLPy.CallUDF(PYTHON_MODULE, "WARP_INDIGO_FEED_OF_BATH", _
        Array(CellsOf(indigo_on_yarn), CellsOf(rinse_loss), CellsOf(overflow), CellsOf(bath_indigo), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_INDIGO_FEED_OF_BATH = CVErr(xlErrValue)
End Function

Public Function WARP_INDIGO_FEED_FROM_VOLUMES(ByVal indigo_on_yarn As Variant, _
        ByVal rinse_loss As Variant, ByVal bath_indigo As Variant, ByVal stock_indigo As Variant, _
        ByVal pick_up_in As Variant, ByVal pick_up_last As Variant, _
        ByVal sky_evaporation As Variant, Optional ByVal other_feeds As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(other_feeds) Then other_feeds = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_INDIGO_FEED_FROM_VOLUMES = XLPy.CallUDF(PYTHON_MODULE, "WARP_INDIGO_FEED_FROM_VOLUMES", _
        Array(CellsOf(indigo_on_yarn), CellsOf(rinse_loss), CellsOf(bath_indigo), CellsOf(stock_indigo), _
        CellsOf(pick_up_in), CellsOf(pick_up_last), CellsOf(sky_evaporation), CellsOf(other_feeds), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_INDIGO_FEED_FROM_VOLUMES = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_FOR_REDUCTION(ByVal indigo_feed As Variant, _
        Optional ByVal prereduced As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(prereduced) Then prereduced = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_FOR_REDUCTION = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_FOR_REDUCTION", _
        Array(CellsOf(indigo_feed), CellsOf(prereduced), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_FOR_REDUCTION = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_FOR_SECOND_REDUCTION(ByVal indigo_feed As Variant, _
        ByVal redissolved As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_FOR_SECOND_REDUCTION = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_FOR_SECOND_REDUCTION", _
        Array(CellsOf(indigo_feed), CellsOf(redissolved), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_FOR_SECOND_REDUCTION = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_CARRIED_OUT(ByVal dips As Variant, ByVal pick_up As Variant, _
        ByVal pick_up_last As Variant, ByVal exchange As Variant, ByVal sky_destruction As Variant, _
        ByVal bath_hydrosulfite As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_CARRIED_OUT = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_CARRIED_OUT", _
        Array(CellsOf(dips), CellsOf(pick_up), CellsOf(pick_up_last), CellsOf(exchange), _
        CellsOf(sky_destruction), CellsOf(bath_hydrosulfite), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_CARRIED_OUT = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_AT_BATH_SURFACE(ByVal hydrosulfite_per_oxygen As Variant, _
        ByVal surface_oxygen As Variant, ByVal bath_surface As Variant, _
        ByVal throughput As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_AT_BATH_SURFACE = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_AT_BATH_SURFACE", _
        Array(CellsOf(hydrosulfite_per_oxygen), CellsOf(surface_oxygen), CellsOf(bath_surface), _
        CellsOf(throughput), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_AT_BATH_SURFACE = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_IN_CIRCULATION(ByVal hydrosulfite_per_oxygen As Variant, _
        ByVal circulation_oxygen As Variant, ByVal circulation_flow As Variant, _
        ByVal throughput As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_IN_CIRCULATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_IN_CIRCULATION", _
        Array(CellsOf(hydrosulfite_per_oxygen), CellsOf(circulation_oxygen), CellsOf(circulation_flow), _
        CellsOf(throughput), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_IN_CIRCULATION = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_BY_ENTRAINED_AIR(ByVal hydrosulfite_per_oxygen As Variant, _
        ByVal entrained_air As Variant, ByVal oxygen_in_air As Variant, _
        ByVal wetted_out As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_BY_ENTRAINED_AIR = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_BY_ENTRAINED_AIR", _
        Array(CellsOf(hydrosulfite_per_oxygen), CellsOf(entrained_air), CellsOf(oxygen_in_air), _
        CellsOf(wetted_out), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_BY_ENTRAINED_AIR = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_BY_DECAY(ByVal decay_rate As Variant, _
        ByVal bath_volume As Variant, ByVal bath_hydrosulfite As Variant, _
        ByVal throughput As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_BY_DECAY = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_BY_DECAY", _
        Array(CellsOf(decay_rate), CellsOf(bath_volume), CellsOf(bath_hydrosulfite), CellsOf(throughput), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_BY_DECAY = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_OF_STOPPAGE(ByVal stoppage_time As Variant, _
        ByVal hydrosulfite_per_oxygen As Variant, ByVal surface_oxygen As Variant, _
        ByVal bath_surface As Variant, ByVal circulation_oxygen As Variant, _
        ByVal circulation_flow As Variant, ByVal decay_rate As Variant, _
        ByVal bath_volume As Variant, ByVal bath_hydrosulfite As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_OF_STOPPAGE = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_OF_STOPPAGE", _
        Array(CellsOf(stoppage_time), CellsOf(hydrosulfite_per_oxygen), CellsOf(surface_oxygen), _
        CellsOf(bath_surface), CellsOf(circulation_oxygen), CellsOf(circulation_flow), _
        CellsOf(decay_rate), CellsOf(bath_volume), CellsOf(bath_hydrosulfite), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_OF_STOPPAGE = CVErr(xlErrValue)
End Function

Public Function WARP_CAUSTIC_FEED_OF_BATH(ByVal hydrosulfite_use As Variant, _
        ByVal hydrosulfite_overflow As Variant, ByVal hydrosulfite_decayed As Variant, _
        ByVal pick_up_last As Variant, ByVal overflow As Variant, ByVal bath_caustic As Variant, _
        ByVal carbon_dioxide As Variant, ByVal caustic_carried_in As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CAUSTIC_FEED_OF_BATH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CAUSTIC_FEED_OF_BATH", _
        Array(CellsOf(hydrosulfite_use), CellsOf(hydrosulfite_overflow), CellsOf(hydrosulfite_decayed), _
        CellsOf(pick_up_last), CellsOf(overflow), CellsOf(bath_caustic), CellsOf(carbon_dioxide), _
        CellsOf(caustic_carried_in), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CAUSTIC_FEED_OF_BATH = CVErr(xlErrValue)
End Function

Public Function WARP_SHARE_ENDING_HALF_AS_SULFATE(ByVal hydrosulfite_per_oxygen As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SHARE_ENDING_HALF_AS_SULFATE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SHARE_ENDING_HALF_AS_SULFATE", _
        Array(CellsOf(hydrosulfite_per_oxygen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SHARE_ENDING_HALF_AS_SULFATE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFITE_FROM_HYDROSULFITE(ByVal hydrosulfite_reduced As Variant, _
        ByVal hydrosulfite_oxidised As Variant, ByVal hydrosulfite_per_oxygen As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFITE_FROM_HYDROSULFITE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFITE_FROM_HYDROSULFITE", _
        Array(CellsOf(hydrosulfite_reduced), CellsOf(hydrosulfite_oxidised), _
        CellsOf(hydrosulfite_per_oxygen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFITE_FROM_HYDROSULFITE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFATE_FROM_HYDROSULFITE(ByVal hydrosulfite_oxidised As Variant, _
        ByVal hydrosulfite_per_oxygen As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFATE_FROM_HYDROSULFITE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFATE_FROM_HYDROSULFITE", _
        Array(CellsOf(hydrosulfite_oxidised), CellsOf(hydrosulfite_per_oxygen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFATE_FROM_HYDROSULFITE = CVErr(xlErrValue)
End Function

Public Function WARP_SALT_IN_BATH(ByVal sulfite_formed As Variant, ByVal sulfate_formed As Variant, _
        ByVal pick_up_last As Variant, ByVal overflow As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SALT_IN_BATH = XLPy.CallUDF(PYTHON_MODULE, "WARP_SALT_IN_BATH", _
        Array(CellsOf(sulfite_formed), CellsOf(sulfate_formed), CellsOf(pick_up_last), CellsOf(overflow), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SALT_IN_BATH = CVErr(xlErrValue)
End Function

Public Function WARP_ELECTROLYSIS_ENERGY_OF_INDIGO(ByVal cell_voltage As Variant, _
        ByVal current_efficiency As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ELECTROLYSIS_ENERGY_OF_INDIGO = XLPy.CallUDF(PYTHON_MODULE, "WARP_ELECTROLYSIS_ENERGY_OF_INDIGO", _
        Array(CellsOf(cell_voltage), CellsOf(current_efficiency), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ELECTROLYSIS_ENERGY_OF_INDIGO = CVErr(xlErrValue)
End Function

Public Function WARP_LEUCO_ACID_SHARE(ByVal acidity As Variant, _
        Optional ByVal first_acid_constant As Variant, _
        Optional ByVal second_acid_constant As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(first_acid_constant) Then first_acid_constant = Empty
    If IsMissing(second_acid_constant) Then second_acid_constant = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LEUCO_ACID_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_LEUCO_ACID_SHARE", _
        Array(CellsOf(acidity), CellsOf(first_acid_constant), CellsOf(second_acid_constant), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LEUCO_ACID_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_LEUCO_SINGLE_SALT_SHARE(ByVal acidity As Variant, _
        Optional ByVal first_acid_constant As Variant, _
        Optional ByVal second_acid_constant As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(first_acid_constant) Then first_acid_constant = Empty
    If IsMissing(second_acid_constant) Then second_acid_constant = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LEUCO_SINGLE_SALT_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_LEUCO_SINGLE_SALT_SHARE", _
        Array(CellsOf(acidity), CellsOf(first_acid_constant), CellsOf(second_acid_constant), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LEUCO_SINGLE_SALT_SHARE = CVErr(xlErrValue)
End Function

' Dye boxes and sulfur dye
Private Sub DescribeGroup7()
    Describe "WARP_DYE_FEED_FOR_DEPTH", "Dye boxes and sulfur dye: Dye to feed for a depth of shade, from the share that stays on the yarn. Gives: dye feed [g/kg].", _
        Array("depth: dye on the finished yarn, of the grey yarn [%], 0.05 to 25 %", _
        "share of the dye fed that stays on the finished yarn [%], 5 to 100 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_DYE_FEED_OF_BOX", "Dye boxes and sulfur dye: Dye that one box must be fed, from pick-up, bath strength, extra uptake and overflow. Gives: dye feed [g/kg].", _
        Array("liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "concentration of the liquor on the entering yarn [g/L], 0 to 1000 g/L", _
        "liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "dye in the box, counted as the depth is [g/L], 0 to 600 g/L", _
        "dye that the fibre draws from the bath beyond the liquor it carries, of what that liquor carries [%], 0 to 300 %; left out: 0 %", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg; left out: 0 L/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_DYE_BATH_STRENGTH", "Dye boxes and sulfur dye: Dye in the bath that puts a wanted amount on yarn that brings no dye. Gives: box dye [g/L].", _
        Array("dye fed, counted as the depth is [g/kg], 0 to 1000 g/kg", _
        "liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "dye that the fibre draws from the bath beyond the liquor it carries, of what that liquor carries [%], 0 to 300 %; left out: 0 %", _
        "unit of the result; left out: g/L")
    Describe "WARP_SULFIDE_FOR_DYE", "Dye boxes and sulfur dye: Sodium sulfide (100 %) that reduces the dye; never near acid (hydrogen sulfide). Gives: sulfide use [g/kg].", _
        Array("dye fed, counted as the depth is [g/kg], 0 to 1000 g/kg", _
        "sodium sulfide (Na2S 100 %) for each mass of dye [kg/kg], 0 to 5 kg/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SULFIDE_FLAKES_FOR_DYE", "Dye boxes and sulfur dye: Sodium sulfide flakes that reduce the dye; never near acid (hydrogen sulfide). Gives: sulfide flakes [g/kg].", _
        Array("dye fed, counted as the depth is [g/kg], 0 to 1000 g/kg", _
        "sodium sulfide (Na2S 100 %) for each mass of dye [kg/kg], 0 to 5 kg/kg", _
        "pure substance in the product as delivered (assay) [%], 1 to 100 %; left out: 60 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_HYDROSULFIDE_FOR_SULFIDE", "Dye boxes and sulfur dye: Sodium hydrosulfide (100 %) that, with its caustic, stands for sodium sulfide (100 %). Gives: hydrosulfide use [g/kg].", _
        Array("sodium sulfide (Na2S 100 %) [g/kg], 0 to 3000 g/kg", "unit of the result; left out: g/kg")
    Describe "WARP_SULFIDE_FROM_HYDROSULFIDE", "Dye boxes and sulfur dye: Sodium sulfide (100 %) that sodium hydrosulfide (100 %) gives with its caustic. Gives: sulfide use [g/kg].", _
        Array("sodium hydrosulfide (NaHS 100 %) [g/kg], 0 to 3000 g/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_CAUSTIC_FOR_HYDROSULFIDE", "Dye boxes and sulfur dye: Caustic (100 %) that turns sodium hydrosulfide (100 %) into sodium sulfide. Gives: caustic use [g/kg].", _
        Array("sodium hydrosulfide (NaHS 100 %) [g/kg], 0 to 3000 g/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_GLUCOSE_FEED_OF_BATH", "Dye boxes and sulfur dye: Glucose (100 %) that a bath must be fed where glucose and caustic reduce the dye. Gives: glucose use [g/kg].", _
        Array("liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "glucose (100 %, without water) in the bath [g/L], 0 to 300 g/L", _
        "glucose (100 %) that the reduction uses up [g/kg], 0 to 500 g/kg", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg; left out: 0 L/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_CAUSTIC_FEED_WITH_GLUCOSE", "Dye boxes and sulfur dye: Caustic (100 %) that a bath must be fed where glucose and caustic reduce the dye. Gives: caustic use [g/kg].", _
        Array("liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "free caustic (NaOH 100 %) in the dye bath [g/L], 0 to 100 g/L", _
        "glucose (100 %) that the reduction uses up [g/kg], 0 to 500 g/kg", _
        "acid groups that one glucose used up turns into [mol/mol], 0 to 6 mol/mol; left out: 1 mol/mol", _
        "liquor that leaves over the weir [L/kg], 0 to 100 L/kg; left out: 0 L/kg", _
        "caustic (NaOH 100 %) that the yarn brings [g/kg], 0 to 3000 g/kg; left out: 0 g/kg", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SULFIDE_TO_DRAIN", "Dye boxes and sulfur dye: Sodium sulfide (100 %) that reaches the drain as sulfide; no acid may follow it (hydrogen sulfide). Gives: sulfide drained [g/kg].", _
        Array("sodium sulfide (Na2S 100 %) [g/kg], 0 to 3000 g/kg", _
        "share of the sulfide that reaches the drain as sulfide [%], 0 to 100 %", _
        "unit of the result; left out: g/kg")
    Describe "WARP_SULFIDE_AS_SULFUR", "Dye boxes and sulfur dye: Sulfide counted as its sulfur, as limits and analyses name it, from sodium sulfide (100 %). Gives: sulfide sulfur [g/kg].", _
        Array("sodium sulfide (Na2S 100 %) [g/kg], 0 to 3000 g/kg", "unit of the result; left out: g/kg")
    Describe "WARP_PEROXIDE_FOR_SULFIDE_TO_SULFATE", "Dye boxes and sulfur dye: Peroxide (100 %) that oxidises sulfide to sulfate; dose into much water, never neat onto sulfide. Gives: peroxide use [g/kg].", _
        Array("sodium sulfide (Na2S 100 %) [g/kg], 0 to 3000 g/kg", "unit of the result; left out: g/kg")
    Describe "WARP_PEROXIDE_FOR_SULFIDE_TO_SULFUR", "Dye boxes and sulfur dye: Peroxide (100 %) that oxidises sulfide to sulfur; dose into much water, never neat onto sulfide. Gives: peroxide use [g/kg].", _
        Array("sodium sulfide (Na2S 100 %) [g/kg], 0 to 3000 g/kg", "unit of the result; left out: g/kg")
End Sub

Public Function WARP_DYE_FEED_FOR_DEPTH(ByVal dye_on_yarn As Variant, _
        ByVal dye_fixation As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DYE_FEED_FOR_DEPTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_DYE_FEED_FOR_DEPTH", _
        Array(CellsOf(dye_on_yarn), CellsOf(dye_fixation), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DYE_FEED_FOR_DEPTH = CVErr(xlErrValue)
End Function

Public Function WARP_DYE_FEED_OF_BOX(ByVal pick_up_in As Variant, _
        ByVal concentration_in As Variant, ByVal pick_up_out As Variant, ByVal box_dye As Variant, _
        Optional ByVal extra_uptake As Variant, Optional ByVal overflow As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(extra_uptake) Then extra_uptake = Empty
    If IsMissing(overflow) Then overflow = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DYE_FEED_OF_BOX = XLPy.CallUDF(PYTHON_MODULE, "WARP_DYE_FEED_OF_BOX", _
        Array(CellsOf(pick_up_in), CellsOf(concentration_in), CellsOf(pick_up_out), CellsOf(box_dye), _
        CellsOf(extra_uptake), CellsOf(overflow), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DYE_FEED_OF_BOX = CVErr(xlErrValue)
End Function

Public Function WARP_DYE_BATH_STRENGTH(ByVal dye_feed As Variant, ByVal pick_up_out As Variant, _
        Optional ByVal extra_uptake As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(extra_uptake) Then extra_uptake = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DYE_BATH_STRENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_DYE_BATH_STRENGTH", _
        Array(CellsOf(dye_feed), CellsOf(pick_up_out), CellsOf(extra_uptake), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DYE_BATH_STRENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_SULFIDE_FOR_DYE(ByVal dye_feed As Variant, ByVal sulfide_ratio As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFIDE_FOR_DYE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFIDE_FOR_DYE", _
        Array(CellsOf(dye_feed), CellsOf(sulfide_ratio), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFIDE_FOR_DYE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFIDE_FLAKES_FOR_DYE(ByVal dye_feed As Variant, _
        ByVal sulfide_ratio As Variant, Optional ByVal strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(strength) Then strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFIDE_FLAKES_FOR_DYE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFIDE_FLAKES_FOR_DYE", _
        Array(CellsOf(dye_feed), CellsOf(sulfide_ratio), CellsOf(strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFIDE_FLAKES_FOR_DYE = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFIDE_FOR_SULFIDE(ByVal sulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFIDE_FOR_SULFIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFIDE_FOR_SULFIDE", _
        Array(CellsOf(sulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFIDE_FOR_SULFIDE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFIDE_FROM_HYDROSULFIDE(ByVal hydrosulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFIDE_FROM_HYDROSULFIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFIDE_FROM_HYDROSULFIDE", _
        Array(CellsOf(hydrosulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFIDE_FROM_HYDROSULFIDE = CVErr(xlErrValue)
End Function

Public Function WARP_CAUSTIC_FOR_HYDROSULFIDE(ByVal hydrosulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CAUSTIC_FOR_HYDROSULFIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_CAUSTIC_FOR_HYDROSULFIDE", _
        Array(CellsOf(hydrosulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CAUSTIC_FOR_HYDROSULFIDE = CVErr(xlErrValue)
End Function

Public Function WARP_GLUCOSE_FEED_OF_BATH(ByVal pick_up_out As Variant, _
        ByVal bath_glucose As Variant, ByVal glucose_taken As Variant, _
        Optional ByVal overflow As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(overflow) Then overflow = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_GLUCOSE_FEED_OF_BATH = XLPy.CallUDF(PYTHON_MODULE, "WARP_GLUCOSE_FEED_OF_BATH", _
        Array(CellsOf(pick_up_out), CellsOf(bath_glucose), CellsOf(glucose_taken), CellsOf(overflow), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_GLUCOSE_FEED_OF_BATH = CVErr(xlErrValue)
End Function

Public Function WARP_CAUSTIC_FEED_WITH_GLUCOSE(ByVal pick_up_out As Variant, _
        ByVal bath_caustic As Variant, ByVal glucose_taken As Variant, _
        Optional ByVal acids_per_glucose As Variant, Optional ByVal overflow As Variant, _
        Optional ByVal caustic_carried_in As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(acids_per_glucose) Then acids_per_glucose = Empty
    If IsMissing(overflow) Then overflow = Empty
    If IsMissing(caustic_carried_in) Then caustic_carried_in = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CAUSTIC_FEED_WITH_GLUCOSE = XLPy.CallUDF(PYTHON_MODULE, "WARP_CAUSTIC_FEED_WITH_GLUCOSE", _
        Array(CellsOf(pick_up_out), CellsOf(bath_caustic), CellsOf(glucose_taken), _
        CellsOf(acids_per_glucose), CellsOf(overflow), CellsOf(caustic_carried_in), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CAUSTIC_FEED_WITH_GLUCOSE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFIDE_TO_DRAIN(ByVal sulfide_use As Variant, ByVal sulfide_left As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFIDE_TO_DRAIN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFIDE_TO_DRAIN", _
        Array(CellsOf(sulfide_use), CellsOf(sulfide_left), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFIDE_TO_DRAIN = CVErr(xlErrValue)
End Function

Public Function WARP_SULFIDE_AS_SULFUR(ByVal sulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFIDE_AS_SULFUR = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFIDE_AS_SULFUR", _
        Array(CellsOf(sulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFIDE_AS_SULFUR = CVErr(xlErrValue)
End Function

Public Function WARP_PEROXIDE_FOR_SULFIDE_TO_SULFATE(ByVal sulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PEROXIDE_FOR_SULFIDE_TO_SULFATE = XLPy.CallUDF(PYTHON_MODULE, "WARP_PEROXIDE_FOR_SULFIDE_TO_SULFATE", _
        Array(CellsOf(sulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PEROXIDE_FOR_SULFIDE_TO_SULFATE = CVErr(xlErrValue)
End Function

Public Function WARP_PEROXIDE_FOR_SULFIDE_TO_SULFUR(ByVal sulfide_use As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PEROXIDE_FOR_SULFIDE_TO_SULFUR = XLPy.CallUDF(PYTHON_MODULE, "WARP_PEROXIDE_FOR_SULFIDE_TO_SULFUR", _
        Array(CellsOf(sulfide_use), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PEROXIDE_FOR_SULFIDE_TO_SULFUR = CVErr(xlErrValue)
End Function

' Steam and heat
Private Sub DescribeGroup8()
    Describe "WARP_ABSOLUTE_PRESSURE", "Steam and heat: Absolute pressure of what a gauge reads. Gives: pressure [bar].", _
        Array("steam pressure above the atmosphere, as a gauge reads [bar], -0.9 to 50 bar", _
        "pressure of the air [bar], 0.5 to 1.1 bar; left out: 1.01325 bar", _
        "unit of the result; left out: bar")
    Describe "WARP_SATURATION_TEMPERATURE", "Steam and heat: Temperature at which water boils, and steam condenses. Gives: temperature [degC].", _
        Array("steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: degC")
    Describe "WARP_SATURATION_PRESSURE", "Steam and heat: Absolute pressure at which water of a temperature boils. Gives: pressure [bar].", _
        Array("temperature [degC], 0 to 350 degC", "unit of the result; left out: bar")
    Describe "WARP_SATURATED_WATER_ENTHALPY", "Steam and heat: Enthalpy of boiling water, which is that of condensate as it forms. Gives: liquid enthalpy [kJ/kg].", _
        Array("steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: kJ/kg")
    Describe "WARP_SATURATED_STEAM_ENTHALPY", "Steam and heat: Enthalpy of dry saturated steam. Gives: steam enthalpy [kJ/kg].", _
        Array("steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: kJ/kg")
    Describe "WARP_EVAPORATION_ENTHALPY", "Steam and heat: Heat that dry saturated steam gives while it condenses. Gives: enthalpy [kJ/kg].", _
        Array("steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: kJ/kg")
    Describe "WARP_WATER_ENTHALPY", "Steam and heat: Enthalpy of liquid water. Gives: liquid enthalpy [kJ/kg].", _
        Array("temperature [degC], 0 to 350 degC", _
        "steam pressure, absolute [bar], 0.02 to 100 bar; left out: 1.01325 bar", _
        "unit of the result; left out: kJ/kg")
    Describe "WARP_VAPOUR_ENTHALPY", "Steam and heat: Enthalpy of the vapour that leaves boiling water of a temperature. Gives: vapour enthalpy [kJ/kg].", _
        Array("temperature [degC], 0 to 350 degC", "unit of the result; left out: kJ/kg")
    Describe "WARP_STEAM_FOR_HEAT", "Steam and heat: Steam that gives a heat through a wall and leaves as saturated condensate. Gives: steam use [kg/kg].", _
        Array("heat [kJ/kg], 0 to 100,000 kJ/kg", "steam pressure, absolute [bar], 0.02 to 100 bar", _
        "unit of the result; left out: kg/kg")
    Describe "WARP_HEATING_STEAM_DIRECT", "Steam and heat: Live steam blown into water to heat it. Gives: steam use [kg/kg].", _
        Array("water heated [kg/kg], 0 to 200 kg/kg", "temperature at the start [degC], 0 to 180 degC", _
        "temperature at the end [degC], 0 to 180 degC", _
        "steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: kg/kg")
    Describe "WARP_HEATING_STEAM_CLOSED", "Steam and heat: Steam that heats water through a closed coil and leaves as saturated condensate. Gives: steam use [kg/kg].", _
        Array("water heated [kg/kg], 0 to 200 kg/kg", "temperature at the start [degC], 0 to 180 degC", _
        "temperature at the end [degC], 0 to 180 degC", _
        "steam pressure, absolute [bar], 0.02 to 100 bar", "unit of the result; left out: kg/kg")
    Describe "WARP_BATH_SURFACE_HEAT", "Steam and heat: Heat that an open bath loses at its surface, spread over the yarn that runs through it. Gives: heat [kJ/kg].", _
        Array("heat lost by each area of open bath [kW/m2], 0 to 20 kW/m2", _
        "open surface of the heated box [m2], 0 to 300 m2", _
        "grey yarn through the range while it runs [kg/h], 0.1 to 50000 kg/h", _
        "unit of the result; left out: kJ/kg")
    Describe "WARP_YARN_HEAT", "Steam and heat: Heat that warms yarn and the water on it. Gives: heat [kJ/kg].", _
        Array("water on the yarn that enters the cans, of the dry yarn [kg/kg], 0 to 3 kg/kg", _
        "temperature at the start [degC], 0 to 180 degC", _
        "temperature at the end [degC], 0 to 180 degC", _
        "heat capacity of dry cotton [kJ/kg/K], 0.5 to 2.5 kJ/kg/K; left out: 1.3 kJ/kg/K", _
        "heat capacity of water [kJ/kg/K], 4 to 4.4 kJ/kg/K; left out: 4.19 kJ/kg/K", _
        "unit of the result; left out: kJ/kg")
    Describe "WARP_DRYING_HEAT", "Steam and heat: Heat that dries yarn: water evaporated, and the yarn with what water it keeps warmed up. Gives: heat [kJ/kg].", _
        Array("water on the yarn that enters the cans, of the dry yarn [kg/kg], 0 to 3 kg/kg", _
        "water on the yarn that leaves the cans, of the dry yarn [%], 0 to 40 %", _
        "temperature at the start [degC], 0 to 180 degC", _
        "temperature of the yarn behind the cans [degC], 40 to 180 degC", _
        "heat capacity of dry cotton [kJ/kg/K], 0.5 to 2.5 kJ/kg/K; left out: 1.3 kJ/kg/K", _
        "heat capacity of water [kJ/kg/K], 4 to 4.4 kJ/kg/K; left out: 4.19 kJ/kg/K", _
        "temperature of the vapour that leaves the yarn [degC], 20 to 180 degC; left out: 100 degC", _
        "unit of the result; left out: kJ/kg")
    Describe "WARP_DRYING_STEAM", "Steam and heat: Steam that drying cans condense to dry yarn. Gives: steam use [kg/kg].", _
        Array("heat [kJ/kg], 0 to 100,000 kJ/kg", "steam pressure, absolute [bar], 0.02 to 100 bar", _
        "heat that reaches the yarn, of the heat of the steam condensed [%], 20 to 100 %", _
        "unit of the result; left out: kg/kg")
    Describe "WARP_STEAM_PER_WATER_EVAPORATED", "Steam and heat: Steam for each kilogram of water evaporated, the figure by which dryers are compared. Gives: steam per evaporated [kg/kg].", _
        Array("steam used [kg/kg], 0 to 100 kg/kg", "water evaporated [kg/kg], 0 to 10 kg/kg", _
        "unit of the result; left out: kg/kg")
    Describe "WARP_IDEAL_STEAM_PER_WATER_EVAPORATED", "Steam and heat: Least steam for each kilogram of water: the floor that no can dryer goes below. Gives: steam per evaporated [kg/kg].", _
        Array("steam pressure, absolute [bar], 0.02 to 100 bar", _
        "temperature at the start [degC], 0 to 180 degC", _
        "temperature of the vapour that leaves the yarn [degC], 20 to 180 degC; left out: 100 degC", _
        "unit of the result; left out: kg/kg")
End Sub

Public Function WARP_ABSOLUTE_PRESSURE(ByVal gauge_pressure As Variant, _
        Optional ByVal atmospheric_pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(atmospheric_pressure) Then atmospheric_pressure = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ABSOLUTE_PRESSURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_ABSOLUTE_PRESSURE", _
        Array(CellsOf(gauge_pressure), CellsOf(atmospheric_pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ABSOLUTE_PRESSURE = CVErr(xlErrValue)
End Function

Public Function WARP_SATURATION_TEMPERATURE(ByVal pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SATURATION_TEMPERATURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SATURATION_TEMPERATURE", _
        Array(CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SATURATION_TEMPERATURE = CVErr(xlErrValue)
End Function

Public Function WARP_SATURATION_PRESSURE(ByVal temperature As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SATURATION_PRESSURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SATURATION_PRESSURE", _
        Array(CellsOf(temperature), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SATURATION_PRESSURE = CVErr(xlErrValue)
End Function

Public Function WARP_SATURATED_WATER_ENTHALPY(ByVal pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SATURATED_WATER_ENTHALPY = XLPy.CallUDF(PYTHON_MODULE, "WARP_SATURATED_WATER_ENTHALPY", _
        Array(CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SATURATED_WATER_ENTHALPY = CVErr(xlErrValue)
End Function

Public Function WARP_SATURATED_STEAM_ENTHALPY(ByVal pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SATURATED_STEAM_ENTHALPY = XLPy.CallUDF(PYTHON_MODULE, "WARP_SATURATED_STEAM_ENTHALPY", _
        Array(CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SATURATED_STEAM_ENTHALPY = CVErr(xlErrValue)
End Function

Public Function WARP_EVAPORATION_ENTHALPY(ByVal pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_EVAPORATION_ENTHALPY = XLPy.CallUDF(PYTHON_MODULE, "WARP_EVAPORATION_ENTHALPY", _
        Array(CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_EVAPORATION_ENTHALPY = CVErr(xlErrValue)
End Function

Public Function WARP_WATER_ENTHALPY(ByVal temperature As Variant, _
        Optional ByVal pressure As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(pressure) Then pressure = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WATER_ENTHALPY = XLPy.CallUDF(PYTHON_MODULE, "WARP_WATER_ENTHALPY", _
        Array(CellsOf(temperature), CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WATER_ENTHALPY = CVErr(xlErrValue)
End Function

Public Function WARP_VAPOUR_ENTHALPY(ByVal temperature As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VAPOUR_ENTHALPY = XLPy.CallUDF(PYTHON_MODULE, "WARP_VAPOUR_ENTHALPY", _
        Array(CellsOf(temperature), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VAPOUR_ENTHALPY = CVErr(xlErrValue)
End Function

Public Function WARP_STEAM_FOR_HEAT(ByVal heat As Variant, ByVal pressure As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STEAM_FOR_HEAT = XLPy.CallUDF(PYTHON_MODULE, "WARP_STEAM_FOR_HEAT", _
        Array(CellsOf(heat), CellsOf(pressure), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STEAM_FOR_HEAT = CVErr(xlErrValue)
End Function

Public Function WARP_HEATING_STEAM_DIRECT(ByVal water_mass As Variant, _
        ByVal temperature_in As Variant, ByVal temperature_out As Variant, _
        ByVal pressure As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HEATING_STEAM_DIRECT = XLPy.CallUDF(PYTHON_MODULE, "WARP_HEATING_STEAM_DIRECT", _
        Array(CellsOf(water_mass), CellsOf(temperature_in), CellsOf(temperature_out), CellsOf(pressure), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HEATING_STEAM_DIRECT = CVErr(xlErrValue)
End Function

Public Function WARP_HEATING_STEAM_CLOSED(ByVal water_mass As Variant, _
        ByVal temperature_in As Variant, ByVal temperature_out As Variant, _
        ByVal pressure As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HEATING_STEAM_CLOSED = XLPy.CallUDF(PYTHON_MODULE, "WARP_HEATING_STEAM_CLOSED", _
        Array(CellsOf(water_mass), CellsOf(temperature_in), CellsOf(temperature_out), CellsOf(pressure), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HEATING_STEAM_CLOSED = CVErr(xlErrValue)
End Function

Public Function WARP_BATH_SURFACE_HEAT(ByVal surface_heat_loss As Variant, _
        ByVal heated_surface As Variant, ByVal throughput As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BATH_SURFACE_HEAT = XLPy.CallUDF(PYTHON_MODULE, "WARP_BATH_SURFACE_HEAT", _
        Array(CellsOf(surface_heat_loss), CellsOf(heated_surface), CellsOf(throughput), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BATH_SURFACE_HEAT = CVErr(xlErrValue)
End Function

Public Function WARP_YARN_HEAT(ByVal moisture_in As Variant, ByVal temperature_in As Variant, _
        ByVal temperature_out As Variant, Optional ByVal heat_capacity_fibre As Variant, _
        Optional ByVal heat_capacity_water As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(heat_capacity_fibre) Then heat_capacity_fibre = Empty
    If IsMissing(heat_capacity_water) Then heat_capacity_water = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_YARN_HEAT = XLPy.CallUDF(PYTHON_MODULE, "WARP_YARN_HEAT", _
        Array(CellsOf(moisture_in), CellsOf(temperature_in), CellsOf(temperature_out), _
        CellsOf(heat_capacity_fibre), CellsOf(heat_capacity_water), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_YARN_HEAT = CVErr(xlErrValue)
End Function

Public Function WARP_DRYING_HEAT(ByVal moisture_in As Variant, ByVal moisture_out As Variant, _
        ByVal temperature_in As Variant, ByVal yarn_temperature_out As Variant, _
        Optional ByVal heat_capacity_fibre As Variant, _
        Optional ByVal heat_capacity_water As Variant, _
        Optional ByVal vapour_temperature As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(heat_capacity_fibre) Then heat_capacity_fibre = Empty
    If IsMissing(heat_capacity_water) Then heat_capacity_water = Empty
    If IsMissing(vapour_temperature) Then vapour_temperature = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DRYING_HEAT = XLPy.CallUDF(PYTHON_MODULE, "WARP_DRYING_HEAT", _
        Array(CellsOf(moisture_in), CellsOf(moisture_out), CellsOf(temperature_in), _
        CellsOf(yarn_temperature_out), CellsOf(heat_capacity_fibre), CellsOf(heat_capacity_water), _
        CellsOf(vapour_temperature), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DRYING_HEAT = CVErr(xlErrValue)
End Function

Public Function WARP_DRYING_STEAM(ByVal heat As Variant, ByVal pressure As Variant, _
        ByVal dryer_efficiency As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DRYING_STEAM = XLPy.CallUDF(PYTHON_MODULE, "WARP_DRYING_STEAM", _
        Array(CellsOf(heat), CellsOf(pressure), CellsOf(dryer_efficiency), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DRYING_STEAM = CVErr(xlErrValue)
End Function

Public Function WARP_STEAM_PER_WATER_EVAPORATED(ByVal steam_use As Variant, _
        ByVal evaporated As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STEAM_PER_WATER_EVAPORATED = XLPy.CallUDF(PYTHON_MODULE, "WARP_STEAM_PER_WATER_EVAPORATED", _
        Array(CellsOf(steam_use), CellsOf(evaporated), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STEAM_PER_WATER_EVAPORATED = CVErr(xlErrValue)
End Function

Public Function WARP_IDEAL_STEAM_PER_WATER_EVAPORATED(ByVal pressure As Variant, _
        ByVal temperature_in As Variant, Optional ByVal vapour_temperature As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(vapour_temperature) Then vapour_temperature = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_IDEAL_STEAM_PER_WATER_EVAPORATED = XLPy.CallUDF(PYTHON_MODULE, "WARP_IDEAL_STEAM_PER_WATER_EVAPORATED", _
        Array(CellsOf(pressure), CellsOf(temperature_in), CellsOf(vapour_temperature), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_IDEAL_STEAM_PER_WATER_EVAPORATED = CVErr(xlErrValue)
End Function

' Size
Private Sub DescribeGroup9()
    Describe "WARP_SIZE_ADD_ON_FROM_PICK_UP", "Size: Size add-on from wet pick-up and solids of the liquor, for warp that enters dry. Gives: size add on [%].", _
        Array("size liquor on the warp behind the squeeze, of the mass of the dry unsized warp [%], 20 to 300 %", _
        "dry size in the size liquor, of the mass of the liquor [%], 0.5 to 50 %", _
        "unit of the result; left out: %")
    Describe "WARP_SIZE_PICK_UP_FROM_ADD_ON", "Size: Wet pick-up that gives a size add-on, for warp that enters dry. Gives: size pick up [%].", _
        Array("size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "dry size in the size liquor, of the mass of the liquor [%], 0.5 to 50 %", _
        "unit of the result; left out: %")
    Describe "WARP_SIZE_SOLIDS_FOR_ADD_ON", "Size: Solids of the size liquor that give an add-on, for warp that enters dry. Gives: size solids [%].", _
        Array("size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "size liquor on the warp behind the squeeze, of the mass of the dry unsized warp [%], 20 to 300 %", _
        "unit of the result; left out: %")
    Describe "WARP_SIZE_LIQUOR_TAKEN", "Size: Volume of size liquor that each kilogram of warp takes, for warp that enters dry. Gives: size liquor [L/kg].", _
        Array("size liquor on the warp behind the squeeze, of the mass of the dry unsized warp [%], 20 to 300 %", _
        "density of the product [kg/L], 0.5 to 3 kg/L", "unit of the result; left out: L/kg")
    Describe "WARP_SIZE_ADD_ON_WET_IN", "Size: Size add-on of warp that enters the box wet with water. Gives: size add on [%].", _
        Array("liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "dry size in each litre of the size box [g/L], 1 to 500 g/L", _
        "unit of the result; left out: %")
    Describe "WARP_SIZE_BOX_STRENGTH_WET_IN", "Size: Strength at which the size box must stand, for warp that enters wet with water. Gives: size box strength [g/L].", _
        Array("size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "unit of the result; left out: g/L")
    Describe "WARP_SIZE_FEED_STRENGTH_WET_IN", "Size: Strength of the size liquor fed that makes up for the water on warp that enters wet. Gives: size feed strength [g/L].", _
        Array("size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "liquor on the yarn as it enters [L/kg], 0 to 3 L/kg", _
        "liquor on the yarn as it leaves [L/kg], 0.2 to 3 L/kg", _
        "unit of the result; left out: g/L")
    Describe "WARP_SIZE_LIQUOR_TO_COOK", "Size: Size liquor to cook for an order, with the losses and what is left in the box at the end. Gives: solution volume [L].", _
        Array("mass of yarn [kg], 0 to 10,000,000 kg", _
        "size liquor that the warp takes [L/kg], 0 to 10 L/kg", _
        "size that is cooked and never reaches the warp: cooker, pipes, box, of the size cooked [%], 0 to 50 %; left out: 0 %", _
        "size liquor left in box and pipes and thrown away [L], 0 to 10000 L; left out: 0 L", _
        "unit of the result; left out: L")
    Describe "WARP_SIZE_FOR_ORDER", "Size: Dry size for an order, with the losses. Gives: pure mass [kg].", _
        Array("mass of yarn [kg], 0 to 10,000,000 kg", _
        "size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "size that is cooked and never reaches the warp: cooker, pipes, box, of the size cooked [%], 0 to 50 %; left out: 0 %", _
        "unit of the result; left out: kg")
    Describe "WARP_SIZE_PER_METRE_OF_WARP", "Size: Dry size on each metre of warp; with one end, on each metre of yarn. Gives: warp size per metre [g/m].", _
        Array("warp ends over the full width, selvedges in, a whole number from 1 to 30000", _
        "mass per length of the yarn as it runs, plied if plied [tex], 1 to 1000 tex", _
        "size solids on the warp, of the unsized mass [%], 0 to 30 %", _
        "unit of the result; left out: g/m")
    Describe "WARP_SIZE_ADD_ON_FROM_WEIGHING", "Size: Size add-on from a sample weighed before and after desizing, both times bone dry. Gives: size add on [%].", _
        Array("bone-dry mass of the sized sample before desizing [g], 0.001 to 100,000,000 g", _
        "bone-dry mass of the same sample after desizing [g], 0.001 to 100,000,000 g", _
        "bone-dry mass that unsized yarn loses in the same desizing [%], 0 to 20 %; left out: 0 %", _
        "unit of the result; left out: %")
End Sub

Public Function WARP_SIZE_ADD_ON_FROM_PICK_UP(ByVal size_pick_up As Variant, _
        ByVal size_solids As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_ADD_ON_FROM_PICK_UP = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_ADD_ON_FROM_PICK_UP", _
        Array(CellsOf(size_pick_up), CellsOf(size_solids), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_ADD_ON_FROM_PICK_UP = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_PICK_UP_FROM_ADD_ON(ByVal size_add_on As Variant, _
        ByVal size_solids As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_PICK_UP_FROM_ADD_ON = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_PICK_UP_FROM_ADD_ON", _
        Array(CellsOf(size_add_on), CellsOf(size_solids), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_PICK_UP_FROM_ADD_ON = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_SOLIDS_FOR_ADD_ON(ByVal size_add_on As Variant, _
        ByVal size_pick_up As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_SOLIDS_FOR_ADD_ON = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_SOLIDS_FOR_ADD_ON", _
        Array(CellsOf(size_add_on), CellsOf(size_pick_up), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_SOLIDS_FOR_ADD_ON = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_LIQUOR_TAKEN(ByVal size_pick_up As Variant, ByVal density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_LIQUOR_TAKEN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_LIQUOR_TAKEN", _
        Array(CellsOf(size_pick_up), CellsOf(density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_LIQUOR_TAKEN = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_ADD_ON_WET_IN(ByVal pick_up_out As Variant, ByVal exchange As Variant, _
        ByVal size_box_strength As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_ADD_ON_WET_IN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_ADD_ON_WET_IN", _
        Array(CellsOf(pick_up_out), CellsOf(exchange), CellsOf(size_box_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_ADD_ON_WET_IN = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_BOX_STRENGTH_WET_IN(ByVal size_add_on As Variant, _
        ByVal pick_up_out As Variant, ByVal exchange As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_BOX_STRENGTH_WET_IN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_BOX_STRENGTH_WET_IN", _
        Array(CellsOf(size_add_on), CellsOf(pick_up_out), CellsOf(exchange), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_BOX_STRENGTH_WET_IN = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_FEED_STRENGTH_WET_IN(ByVal size_add_on As Variant, _
        ByVal pick_up_in As Variant, ByVal pick_up_out As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_FEED_STRENGTH_WET_IN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_FEED_STRENGTH_WET_IN", _
        Array(CellsOf(size_add_on), CellsOf(pick_up_in), CellsOf(pick_up_out), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_FEED_STRENGTH_WET_IN = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_LIQUOR_TO_COOK(ByVal yarn_mass As Variant, ByVal size_liquor As Variant, _
        Optional ByVal size_loss As Variant, Optional ByVal size_box_volume As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(size_loss) Then size_loss = Empty
    If IsMissing(size_box_volume) Then size_box_volume = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_LIQUOR_TO_COOK = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_LIQUOR_TO_COOK", _
        Array(CellsOf(yarn_mass), CellsOf(size_liquor), CellsOf(size_loss), CellsOf(size_box_volume), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_LIQUOR_TO_COOK = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_FOR_ORDER(ByVal yarn_mass As Variant, ByVal size_add_on As Variant, _
        Optional ByVal size_loss As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(size_loss) Then size_loss = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_FOR_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_FOR_ORDER", _
        Array(CellsOf(yarn_mass), CellsOf(size_add_on), CellsOf(size_loss), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_FOR_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_PER_METRE_OF_WARP(ByVal ends As Variant, ByVal linear_density As Variant, _
        ByVal size_add_on As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_PER_METRE_OF_WARP = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_PER_METRE_OF_WARP", _
        Array(CellsOf(ends), CellsOf(linear_density), CellsOf(size_add_on), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_PER_METRE_OF_WARP = CVErr(xlErrValue)
End Function

Public Function WARP_SIZE_ADD_ON_FROM_WEIGHING(ByVal sized_mass As Variant, _
        ByVal desized_mass As Variant, Optional ByVal blank_loss As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(blank_loss) Then blank_loss = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SIZE_ADD_ON_FROM_WEIGHING = XLPy.CallUDF(PYTHON_MODULE, "WARP_SIZE_ADD_ON_FROM_WEIGHING", _
        Array(CellsOf(sized_mass), CellsOf(desized_mass), CellsOf(blank_loss), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SIZE_ADD_ON_FROM_WEIGHING = CVErr(xlErrValue)
End Function

' Prices and cost
Private Sub DescribeGroup10()
    Describe "WARP_DELIVERED_PRICE", "Prices and cost: Price of a product at the mill's gate, in the mill's money. Gives: price [money/kg].", _
        Array("price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "freight and duty on the product as delivered [money/kg], 0 to 100,000 money/kg; left out: 0 money/kg", _
        "money of the mill for one of the other currency, 1e-06 to 1,000,000; left out: 1", _
        "unit of the result; left out: money/kg")
    Describe "WARP_PRICE_OF_PURE_SUBSTANCE", "Prices and cost: Price of the active part of a product, which is what offers of unlike strength compare by. Gives: pure price [money/kg].", _
        Array("price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "pure substance in the product as delivered (assay) [%], 1 to 100 %", _
        "freight and duty on the product as delivered [money/kg], 0 to 100,000 money/kg; left out: 0 money/kg", _
        "unit of the result; left out: money/kg")
    Describe "WARP_PRICE_FROM_VOLUME", "Prices and cost: Price by mass of a product that is sold by volume. Gives: price [money/kg].", _
        Array("price of a product sold by volume [money/L], 0 to 1,000,000 money/L", _
        "density of the product [kg/L], 0.5 to 3 kg/L", "unit of the result; left out: money/kg")
    Describe "WARP_PRICE_WITH_MARGIN", "Prices and cost: Selling price that leaves a margin, as a share of that price. Gives: selling price [money/kg].", _
        Array("cost per mass of yarn [money/kg], 0 to 1,000,000,000 money/kg", _
        "margin, of the selling price [%], 0 to 90 %", "unit of the result; left out: money/kg")
    Describe "WARP_COST_PER_METRE_OF_CLOTH", "Prices and cost: Cost per metre of cloth from the cost per mass of warp. Gives: cost per metre [money/m].", _
        Array("cost per mass of yarn [money/kg], 0 to 1,000,000,000 money/kg", _
        "grey warp yarn bought per metre of loom-state cloth [g/m], 0 to 5000 g/m", _
        "unit of the result; left out: money/m")
    Describe "WARP_COST_OF_FIRST_QUALITY", "Prices and cost: Cost of what is of first quality, which carries what the rest does not bring back. Gives: first quality cost [money/kg].", _
        Array("cost per mass of yarn [money/kg], 0 to 1,000,000,000 money/kg", _
        "metres off shade, of the metres made [%], 0 to 40 %", _
        "metres of second quality, of the metres made [%], 0 to 40 %", _
        "what a metre off shade brings back, of the cost of a metre made [%], 0 to 200 %", _
        "what a metre of second quality brings back, of a metre's cost [%], 0 to 200 %", _
        "unit of the result; left out: money/kg")
End Sub

Public Function WARP_DELIVERED_PRICE(ByVal price As Variant, Optional ByVal freight As Variant, _
        Optional ByVal exchange_rate As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(freight) Then freight = Empty
    If IsMissing(exchange_rate) Then exchange_rate = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DELIVERED_PRICE = XLPy.CallUDF(PYTHON_MODULE, "WARP_DELIVERED_PRICE", _
        Array(CellsOf(price), CellsOf(freight), CellsOf(exchange_rate), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DELIVERED_PRICE = CVErr(xlErrValue)
End Function

Public Function WARP_PRICE_OF_PURE_SUBSTANCE(ByVal price As Variant, ByVal strength As Variant, _
        Optional ByVal freight As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(freight) Then freight = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PRICE_OF_PURE_SUBSTANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRICE_OF_PURE_SUBSTANCE", _
        Array(CellsOf(price), CellsOf(strength), CellsOf(freight), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PRICE_OF_PURE_SUBSTANCE = CVErr(xlErrValue)
End Function

Public Function WARP_PRICE_FROM_VOLUME(ByVal price_per_litre As Variant, ByVal density As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PRICE_FROM_VOLUME = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRICE_FROM_VOLUME", _
        Array(CellsOf(price_per_litre), CellsOf(density), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PRICE_FROM_VOLUME = CVErr(xlErrValue)
End Function

Public Function WARP_PRICE_WITH_MARGIN(ByVal cost As Variant, ByVal margin As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PRICE_WITH_MARGIN = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRICE_WITH_MARGIN", _
        Array(CellsOf(cost), CellsOf(margin), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PRICE_WITH_MARGIN = CVErr(xlErrValue)
End Function

Public Function WARP_COST_PER_METRE_OF_CLOTH(ByVal cost As Variant, _
        ByVal warp_mass_per_metre As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_COST_PER_METRE_OF_CLOTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_COST_PER_METRE_OF_CLOTH", _
        Array(CellsOf(cost), CellsOf(warp_mass_per_metre), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_COST_PER_METRE_OF_CLOTH = CVErr(xlErrValue)
End Function

Public Function WARP_COST_OF_FIRST_QUALITY(ByVal cost As Variant, ByVal off_shade_share As Variant, _
        ByVal seconds_share As Variant, ByVal off_shade_value As Variant, _
        ByVal seconds_value As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_COST_OF_FIRST_QUALITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_COST_OF_FIRST_QUALITY", _
        Array(CellsOf(cost), CellsOf(off_shade_share), CellsOf(seconds_share), CellsOf(off_shade_value), _
        CellsOf(seconds_value), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_COST_OF_FIRST_QUALITY = CVErr(xlErrValue)
End Function

' Orders and stock
Private Sub DescribeGroup11()
    Describe "WARP_PACKS_TO_ORDER", "Orders and stock: Whole packs to order for a need less the stock. Gives: packs.", _
        Array("product as delivered that the orders need [kg], 0 to 100,000,000 kg", _
        "product as delivered in stock [kg], 0 to 100,000,000 kg", _
        "product in one pack: bag, drum, container, tanker [kg], 0.01 to 50000 kg", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_MASS_OF_PACKS", "Orders and stock: Mass in a number of packs. Gives: delivered mass [kg].", _
        Array("whole packs, a whole number from 0 to 1,000,000", _
        "product in one pack: bag, drum, container, tanker [kg], 0.01 to 50000 kg", _
        "unit of the result; left out: kg")
    Describe "WARP_STOCK_REACH", "Orders and stock: Time that a stock lasts at a steady rate of use. Gives: stock reach [day].", _
        Array("product as delivered in stock [kg], 0 to 100,000,000 kg", _
        "product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "unit of the result; left out: day")
    Describe "WARP_TIME_LEFT_TO_ORDER", "Orders and stock: Time from today to the last day to order; below zero it is late. Gives: order margin [day].", _
        Array("time from today to the day of need [day], -3650 to 3650 day", _
        "time from the order to the product in store [day], 0 to 1000 day", _
        "time in hand, for what comes late [day], 0 to 365 day; left out: 0 day", _
        "unit of the result; left out: day")
    Describe "WARP_TIME_LEFT_OF_OPENED_PACK", "Orders and stock: Time that an opened pack still keeps; below zero it is past, so titrate or do not use it. Gives: time left [day].", _
        Array("time that an opened pack keeps, by its supplier [day], 0 to 3650 day", _
        "time since the pack was opened [day], 0 to 3650 day", "unit of the result; left out: day")
    Describe "WARP_COST_OF_ORDER", "Orders and stock: Cost of ordering a number of packs, with a lower price for all of them from a price break on. Gives: order cost [money].", _
        Array("whole packs, a whole number from 0 to 1,000,000", _
        "product in one pack: bag, drum, container, tanker [kg], 0.01 to 50000 kg", _
        "price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "packs from which the break price holds, for all of them, a whole number from 1 to 1,000,000", _
        "price at the price break, as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "charge for an order of any size [money], 0 to 1,000,000,000 money; left out: 0 money", _
        "unit of the result; left out: money")
    Describe "WARP_SAFETY_STOCK", "Orders and stock: Stock that is held against more use, or a later delivery, than is usual. Gives: safety mass [kg].", _
        Array("share of deliveries before which the stock does not run out [%], 50 to 99.999 %", _
        "product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "standard deviation of the use of one period, as delivered [kg], 0 to 100,000,000 kg", _
        "period that the spread of use is of, such as a day or a week [day], 0.04 to 366 day", _
        "time from the order to the product in store [day], 0 to 1000 day", _
        "standard deviation of the lead time [day], 0 to 365 day; left out: 0 day", _
        "unit of the result; left out: kg")
    Describe "WARP_REORDER_POINT", "Orders and stock: Stock, with what is on order, at which an order is placed. Gives: reorder mass [kg].", _
        Array("product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "time from the order to the product in store [day], 0 to 1000 day", _
        "safety stock, as delivered [kg], 0 to 1,000,000,000 kg", _
        "unit of the result; left out: kg")
    Describe "WARP_ECONOMIC_ORDER", "Orders and stock: Order that makes the charges of ordering and of holding stock together least, at one price. Gives: order mass [kg].", _
        Array("product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "charge for an order of any size [money], 0 to 1,000,000,000 money", _
        "what holding stock costs in a year, of its price [%/year], 1 to 200 %/year", _
        "unit of the result; left out: kg")
    Describe "WARP_COST_OF_BUYING", "Orders and stock: What buying a product costs in a time: price, orders, and holding half an order on the mean. Gives: buying cost [money/year].", _
        Array("product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "product in one order, as delivered [kg], 1e-06 to 1,000,000,000 kg", _
        "price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "charge for an order of any size [money], 0 to 1,000,000,000 money", _
        "what holding stock costs in a year, of its price [%/year], 1 to 200 %/year", _
        "unit of the result; left out: money/year")
    Describe "WARP_BEST_ORDER", "Orders and stock: Order that makes buying cheapest, with a lower price for all of it from a price break on. Gives: order mass [kg].", _
        Array("product as delivered used, over all days of the calendar [kg/day], 0.001 to 10,000,000 kg/day", _
        "price of the product as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "order from which the break price holds, for all of it [kg], 0 to 1,000,000,000 kg", _
        "price at the price break, as delivered [money/kg], 0 to 1,000,000 money/kg", _
        "charge for an order of any size [money], 0 to 1,000,000,000 money", _
        "what holding stock costs in a year, of its price [%/year], 1 to 200 %/year", _
        "unit of the result; left out: kg")
    Describe "WARP_PRICE_VARIANCE", "Orders and stock: Part of the variance that the price makes: above zero, the product cost more than the standard. Gives: variance [money].", _
        Array("price paid in fact [money/kg], 0 to 1,000,000 money/kg", _
        "price in the standard [money/kg], 0 to 1,000,000 money/kg", _
        "product used in fact [kg], 0 to 1,000,000,000 kg", "unit of the result; left out: money")
    Describe "WARP_USAGE_VARIANCE", "Orders and stock: Part of the variance that the use makes: above zero, more was used than the standard allows. Gives: variance [money].", _
        Array("product used in fact [kg], 0 to 1,000,000,000 kg", _
        "product that the standard allows for what was made [kg], 0 to 1,000,000,000 kg", _
        "price in the standard [money/kg], 0 to 1,000,000 money/kg", _
        "unit of the result; left out: money")
    Describe "WARP_STRENGTH_VARIANCE", "Orders and stock: Part of the variance that the strength makes: above zero, a weak batch took more product. Gives: variance [money].", _
        Array("product used in fact [kg], 0 to 1,000,000,000 kg", _
        "active part of what was used in fact [%], 1 to 100 %", _
        "active part in the standard [%], 1 to 100 %", _
        "price in the standard [money/kg], 0 to 1,000,000 money/kg", _
        "unit of the result; left out: money")
    Describe "WARP_MIX_VARIANCE", "Orders and stock: Part of the variance that the mix makes: above zero, there was more of this than its share. Gives: variance [money].", _
        Array("mass of one product, or of one kind of what was made [kg], 0 to 1,000,000,000 kg", _
        "mass of all together, in fact [kg], 0 to 10,000,000,000 kg", _
        "share in all together, in the standard or the plan [%], 0 to 100 %", _
        "price in the standard [money/kg], 0 to 1,000,000 money/kg", _
        "unit of the result; left out: money")
    Describe "WARP_VOLUME_VARIANCE", "Orders and stock: Part of the variance that the total makes, at the mix of the standard: above zero, there was more. Gives: variance [money].", _
        Array("mass of all together, in fact [kg], 0 to 10,000,000,000 kg", _
        "mass of all together, in the standard or the plan [kg], 0 to 10,000,000,000 kg", _
        "share in all together, in the standard or the plan [%], 0 to 100 %", _
        "price in the standard [money/kg], 0 to 1,000,000 money/kg", _
        "unit of the result; left out: money")
End Sub

Public Function WARP_PACKS_TO_ORDER(ByVal needed_mass As Variant, ByVal stock_mass As Variant, _
        ByVal pack_mass As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PACKS_TO_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_PACKS_TO_ORDER", _
        Array(CellsOf(needed_mass), CellsOf(stock_mass), CellsOf(pack_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PACKS_TO_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_MASS_OF_PACKS(ByVal packs As Variant, ByVal pack_mass As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MASS_OF_PACKS = XLPy.CallUDF(PYTHON_MODULE, "WARP_MASS_OF_PACKS", _
        Array(CellsOf(packs), CellsOf(pack_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MASS_OF_PACKS = CVErr(xlErrValue)
End Function

Public Function WARP_STOCK_REACH(ByVal stock_mass As Variant, ByVal use_rate As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STOCK_REACH = XLPy.CallUDF(PYTHON_MODULE, "WARP_STOCK_REACH", _
        Array(CellsOf(stock_mass), CellsOf(use_rate), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STOCK_REACH = CVErr(xlErrValue)
End Function

Public Function WARP_TIME_LEFT_TO_ORDER(ByVal time_to_need As Variant, ByVal lead_time As Variant, _
        Optional ByVal spare_time As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(spare_time) Then spare_time = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_TIME_LEFT_TO_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_TIME_LEFT_TO_ORDER", _
        Array(CellsOf(time_to_need), CellsOf(lead_time), CellsOf(spare_time), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_TIME_LEFT_TO_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_TIME_LEFT_OF_OPENED_PACK(ByVal keeping_time As Variant, _
        ByVal time_open As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_TIME_LEFT_OF_OPENED_PACK = XLPy.CallUDF(PYTHON_MODULE, "WARP_TIME_LEFT_OF_OPENED_PACK", _
        Array(CellsOf(keeping_time), CellsOf(time_open), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_TIME_LEFT_OF_OPENED_PACK = CVErr(xlErrValue)
End Function

Public Function WARP_COST_OF_ORDER(ByVal packs As Variant, ByVal pack_mass As Variant, _
        ByVal price As Variant, ByVal break_packs As Variant, ByVal break_price As Variant, _
        Optional ByVal order_charge As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(order_charge) Then order_charge = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_COST_OF_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_COST_OF_ORDER", _
        Array(CellsOf(packs), CellsOf(pack_mass), CellsOf(price), CellsOf(break_packs), _
        CellsOf(break_price), CellsOf(order_charge), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_COST_OF_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_SAFETY_STOCK(ByVal service_level As Variant, ByVal use_rate As Variant, _
        ByVal use_spread As Variant, ByVal use_period As Variant, ByVal lead_time As Variant, _
        Optional ByVal lead_time_spread As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(lead_time_spread) Then lead_time_spread = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SAFETY_STOCK = XLPy.CallUDF(PYTHON_MODULE, "WARP_SAFETY_STOCK", _
        Array(CellsOf(service_level), CellsOf(use_rate), CellsOf(use_spread), CellsOf(use_period), _
        CellsOf(lead_time), CellsOf(lead_time_spread), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SAFETY_STOCK = CVErr(xlErrValue)
End Function

Public Function WARP_REORDER_POINT(ByVal use_rate As Variant, ByVal lead_time As Variant, _
        ByVal safety_mass As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_REORDER_POINT = XLPy.CallUDF(PYTHON_MODULE, "WARP_REORDER_POINT", _
        Array(CellsOf(use_rate), CellsOf(lead_time), CellsOf(safety_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_REORDER_POINT = CVErr(xlErrValue)
End Function

Public Function WARP_ECONOMIC_ORDER(ByVal use_rate As Variant, ByVal price As Variant, _
        ByVal order_charge As Variant, ByVal holding_rate As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ECONOMIC_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_ECONOMIC_ORDER", _
        Array(CellsOf(use_rate), CellsOf(price), CellsOf(order_charge), CellsOf(holding_rate), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ECONOMIC_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_COST_OF_BUYING(ByVal use_rate As Variant, ByVal order_mass As Variant, _
        ByVal price As Variant, ByVal order_charge As Variant, ByVal holding_rate As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_COST_OF_BUYING = XLPy.CallUDF(PYTHON_MODULE, "WARP_COST_OF_BUYING", _
        Array(CellsOf(use_rate), CellsOf(order_mass), CellsOf(price), CellsOf(order_charge), _
        CellsOf(holding_rate), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_COST_OF_BUYING = CVErr(xlErrValue)
End Function

Public Function WARP_BEST_ORDER(ByVal use_rate As Variant, ByVal price As Variant, _
        ByVal break_mass As Variant, ByVal break_price As Variant, ByVal order_charge As Variant, _
        ByVal holding_rate As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BEST_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_BEST_ORDER", _
        Array(CellsOf(use_rate), CellsOf(price), CellsOf(break_mass), CellsOf(break_price), _
        CellsOf(order_charge), CellsOf(holding_rate), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BEST_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_PRICE_VARIANCE(ByVal actual_price As Variant, ByVal standard_price As Variant, _
        ByVal actual_mass As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PRICE_VARIANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRICE_VARIANCE", _
        Array(CellsOf(actual_price), CellsOf(standard_price), CellsOf(actual_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PRICE_VARIANCE = CVErr(xlErrValue)
End Function

Public Function WARP_USAGE_VARIANCE(ByVal actual_mass As Variant, ByVal standard_mass As Variant, _
        ByVal standard_price As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_USAGE_VARIANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_USAGE_VARIANCE", _
        Array(CellsOf(actual_mass), CellsOf(standard_mass), CellsOf(standard_price), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_USAGE_VARIANCE = CVErr(xlErrValue)
End Function

Public Function WARP_STRENGTH_VARIANCE(ByVal actual_mass As Variant, _
        ByVal actual_strength As Variant, ByVal standard_strength As Variant, _
        ByVal standard_price As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_STRENGTH_VARIANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_STRENGTH_VARIANCE", _
        Array(CellsOf(actual_mass), CellsOf(actual_strength), CellsOf(standard_strength), _
        CellsOf(standard_price), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_STRENGTH_VARIANCE = CVErr(xlErrValue)
End Function

Public Function WARP_MIX_VARIANCE(ByVal part_mass As Variant, ByVal total_mass As Variant, _
        ByVal standard_share As Variant, ByVal standard_price As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MIX_VARIANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_MIX_VARIANCE", _
        Array(CellsOf(part_mass), CellsOf(total_mass), CellsOf(standard_share), CellsOf(standard_price), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MIX_VARIANCE = CVErr(xlErrValue)
End Function

Public Function WARP_VOLUME_VARIANCE(ByVal total_mass As Variant, _
        ByVal standard_total_mass As Variant, ByVal standard_share As Variant, _
        ByVal standard_price As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VOLUME_VARIANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_VOLUME_VARIANCE", _
        Array(CellsOf(total_mass), CellsOf(standard_total_mass), CellsOf(standard_share), _
        CellsOf(standard_price), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VOLUME_VARIANCE = CVErr(xlErrValue)
End Function

' Discharge
Private Sub DescribeGroup12()
    Describe "WARP_CONCENTRATION_FROM_LOAD", "Discharge: Concentration of a parameter from its load and the flow; also what a limit of a load comes to. Gives: effluent concentration [mg/L].", _
        Array("mass of a parameter in the effluent [g/kg], 0 to 5000 g/kg", _
        "effluent [L/kg], 0 to 1000 L/kg", "unit of the result; left out: mg/L")
    Describe "WARP_LOAD_FROM_CONCENTRATION", "Discharge: Load of a parameter, from its concentration and the flow. Gives: load [g/kg].", _
        Array("concentration in the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "effluent [L/kg], 0 to 1000 L/kg", "unit of the result; left out: g/kg")
    Describe "WARP_LOAD_PER_METRE_OF_CLOTH", "Discharge: Load per metre of cloth, from the load per mass of warp. Gives: load per metre [g/m].", _
        Array("mass of a parameter in the effluent [g/kg], 0 to 5000 g/kg", _
        "grey warp yarn bought per metre of loom-state cloth [g/m], 0 to 5000 g/m", _
        "unit of the result; left out: g/m")
    Describe "WARP_ACID_FOR_ALKALINITY", "Discharge: Acid (100 %) that takes up a strong-ion difference in full; sulfuric acid when no other is named. Gives: acid demand [g/L].", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "pure acid that takes up one mol of charge [g/mol], 1 to 500 g/mol; left out: 49.036 g/mol", _
        "unit of the result; left out: g/L")
    Describe "WARP_OXYGEN_DEMAND_OF_LOAD", "Discharge: Chemical oxygen demand of a load. Gives: load [g/kg].", _
        Array("mass of a parameter in the effluent [g/kg], 0 to 5000 g/kg", _
        "oxygen taken by full oxidation, per substance [kg/kg], 0 to 5 kg/kg", _
        "share of the theoretical demand that the test finds [%], 0 to 120 %; left out: 100 %", _
        "unit of the result; left out: g/kg")
End Sub

Public Function WARP_CONCENTRATION_FROM_LOAD(ByVal load As Variant, _
        ByVal effluent_volume As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATION_FROM_LOAD = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATION_FROM_LOAD", _
        Array(CellsOf(load), CellsOf(effluent_volume), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATION_FROM_LOAD = CVErr(xlErrValue)
End Function

Public Function WARP_LOAD_FROM_CONCENTRATION(ByVal effluent_concentration As Variant, _
        ByVal effluent_volume As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOAD_FROM_CONCENTRATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOAD_FROM_CONCENTRATION", _
        Array(CellsOf(effluent_concentration), CellsOf(effluent_volume), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOAD_FROM_CONCENTRATION = CVErr(xlErrValue)
End Function

Public Function WARP_LOAD_PER_METRE_OF_CLOTH(ByVal load As Variant, _
        ByVal warp_mass_per_metre As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOAD_PER_METRE_OF_CLOTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOAD_PER_METRE_OF_CLOTH", _
        Array(CellsOf(load), CellsOf(warp_mass_per_metre), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOAD_PER_METRE_OF_CLOTH = CVErr(xlErrValue)
End Function

Public Function WARP_ACID_FOR_ALKALINITY(ByVal alkalinity As Variant, _
        Optional ByVal acid_per_charge As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(acid_per_charge) Then acid_per_charge = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ACID_FOR_ALKALINITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_ACID_FOR_ALKALINITY", _
        Array(CellsOf(alkalinity), CellsOf(acid_per_charge), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ACID_FOR_ALKALINITY = CVErr(xlErrValue)
End Function

Public Function WARP_OXYGEN_DEMAND_OF_LOAD(ByVal load As Variant, ByVal oxygen_demand As Variant, _
        Optional ByVal recovery As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(recovery) Then recovery = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_OXYGEN_DEMAND_OF_LOAD = XLPy.CallUDF(PYTHON_MODULE, "WARP_OXYGEN_DEMAND_OF_LOAD", _
        Array(CellsOf(load), CellsOf(oxygen_demand), CellsOf(recovery), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_OXYGEN_DEMAND_OF_LOAD = CVErr(xlErrValue)
End Function

' pH and acid
Private Sub DescribeGroup13()
    Describe "WARP_AMOUNT_CONCENTRATION", "pH and acid: Amount of substance in each litre, from mass and molar mass. Gives: amount concentration [mmol/L].", _
        Array("concentration in the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "mass of one mol [g/mol], 1 to 5000 g/mol", "unit of the result; left out: mmol/L")
    Describe "WARP_PH_FROM_FREE_CAUSTIC", "pH and acid: The pH of a water that holds free caustic (100 %) and no weak acid: ideal, 25 degC. Gives: acidity.", _
        Array("free caustic (NaOH 100 %) in the water [g/L], 0 to 200 g/L", _
        "ion product of water, as the minus of its power of ten, 12 to 15; left out: 13.995", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_FREE_CAUSTIC_FROM_PH", "pH and acid: Free caustic (100 %) in a water of a pH: ideal, 25 degC; what a titration finds is more. Gives: free caustic [g/L].", _
        Array("pH, 0 to 14", _
        "ion product of water, as the minus of its power of ten, 12 to 15; left out: 13.995", _
        "unit of the result; left out: g/L")
    Describe "WARP_ALKALINITY_AT_PH", "pH and acid: Strong-ion difference of a water of a pH that holds known weak acids. Gives: alkalinity [mmol/L].", _
        Array("pH, 0 to 14", _
        "carbon dioxide, bicarbonate and carbonate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "sulfur dioxide, bisulfite and sulfite together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "hydrogen sulfide and its ions together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "acetic acid and acetate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: mmol/L")
    Describe "WARP_PH_FROM_STRONG_IONS", "pH and acid: The pH of a water from its strong-ion difference and its weak acids, shut off from air. Gives: acidity.", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "carbon dioxide, bicarbonate and carbonate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "sulfur dioxide, bisulfite and sulfite together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "hydrogen sulfide and its ions together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "acetic acid and acetate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_PH_UNDER_CARBON_DIOXIDE", "pH and acid: The pH of a water at rest with a gas that holds carbon dioxide, air or flue gas. Gives: acidity.", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "pressure of the carbon dioxide in the gas, alone [bar], 0 to 2 bar", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_ACID_TO_REACH_PH", "pH and acid: Strong acid (100 %) that brings a water to a pH, sulfuric if no other is named; never on sulfide. Gives: acid demand [g/L].", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "pH to be reached; lower sets poisonous gas free, 6 to 12", _
        "carbon dioxide, bicarbonate and carbonate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "sulfur dioxide, bisulfite and sulfite together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "acetic acid and acetate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "pure acid that takes up one mol of charge [g/mol], 1 to 500 g/mol; left out: 49.036 g/mol", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: g/L")
    Describe "WARP_ACETIC_ACID_TO_REACH_PH", "pH and acid: Acetic acid (100 %) that brings a water to a pH; it adds oxygen demand; never on sulfide. Gives: acid demand [g/L].", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "pH to be reached; lower sets poisonous gas free, 6 to 12", _
        "carbon dioxide, bicarbonate and carbonate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "sulfur dioxide, bisulfite and sulfite together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "acetic acid and acetate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: g/L")
    Describe "WARP_CARBON_DIOXIDE_TO_REACH_PH", "pH and acid: Carbon dioxide that a water must dissolve to come to a pH; never on sulfide (hydrogen sulfide). Gives: carbon dioxide demand [g/L].", _
        Array("strong-ion difference of the water [mmol/L], -100,000 to 100,000 mmol/L", _
        "pH to be reached; lower sets poisonous gas free, 6 to 12", _
        "carbon dioxide, bicarbonate and carbonate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "sulfur dioxide, bisulfite and sulfite together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "acetic acid and acetate together [mmol/L], 0 to 5000 mmol/L; left out: 0 mmol/L", _
        "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: g/L")
    Describe "WARP_FLUE_GAS_FOR_CARBON_DIOXIDE", "pH and acid: Volume of flue gas, at 25 degC and 1 atm, for each volume of water; it fills pits and chokes. Gives: flue gas.", _
        Array("carbon dioxide that the water dissolves [g/L], 0 to 1000 g/L", _
        "carbon dioxide in the gas, by volume [%], 1 to 100 %", _
        "share of the carbon dioxide blown in that the water takes [%], 1 to 100 %", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_SULFATE_FROM_ACID", "pH and acid: Sulfate that sulfuric acid (100 %) leaves in the water it neutralises. Gives: effluent concentration [mg/L].", _
        Array("acid (100 %) that the alkalinity takes [g/L], 0 to 1000 g/L", _
        "unit of the result; left out: mg/L")
End Sub

Public Function WARP_AMOUNT_CONCENTRATION(ByVal effluent_concentration As Variant, _
        ByVal molar_mass As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_AMOUNT_CONCENTRATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_AMOUNT_CONCENTRATION", _
        Array(CellsOf(effluent_concentration), CellsOf(molar_mass), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_AMOUNT_CONCENTRATION = CVErr(xlErrValue)
End Function

Public Function WARP_PH_FROM_FREE_CAUSTIC(ByVal free_caustic As Variant, _
        Optional ByVal water_constant As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(water_constant) Then water_constant = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PH_FROM_FREE_CAUSTIC = XLPy.CallUDF(PYTHON_MODULE, "WARP_PH_FROM_FREE_CAUSTIC", _
        Array(CellsOf(free_caustic), CellsOf(water_constant), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PH_FROM_FREE_CAUSTIC = CVErr(xlErrValue)
End Function

Public Function WARP_FREE_CAUSTIC_FROM_PH(ByVal acidity As Variant, _
        Optional ByVal water_constant As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(water_constant) Then water_constant = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FREE_CAUSTIC_FROM_PH = XLPy.CallUDF(PYTHON_MODULE, "WARP_FREE_CAUSTIC_FROM_PH", _
        Array(CellsOf(acidity), CellsOf(water_constant), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FREE_CAUSTIC_FROM_PH = CVErr(xlErrValue)
End Function

Public Function WARP_ALKALINITY_AT_PH(ByVal acidity As Variant, _
        Optional ByVal total_carbonate As Variant, Optional ByVal total_sulfite As Variant, _
        Optional ByVal total_sulfide As Variant, Optional ByVal total_acetate As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(total_carbonate) Then total_carbonate = Empty
    If IsMissing(total_sulfite) Then total_sulfite = Empty
    If IsMissing(total_sulfide) Then total_sulfide = Empty
    If IsMissing(total_acetate) Then total_acetate = Empty
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ALKALINITY_AT_PH = XLPy.CallUDF(PYTHON_MODULE, "WARP_ALKALINITY_AT_PH", _
        Array(CellsOf(acidity), CellsOf(total_carbonate), CellsOf(total_sulfite), CellsOf(total_sulfide), _
        CellsOf(total_acetate), CellsOf(effluent_temperature), CellsOf(ionic_strength), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ALKALINITY_AT_PH = CVErr(xlErrValue)
End Function

Public Function WARP_PH_FROM_STRONG_IONS(ByVal alkalinity As Variant, _
        Optional ByVal total_carbonate As Variant, Optional ByVal total_sulfite As Variant, _
        Optional ByVal total_sulfide As Variant, Optional ByVal total_acetate As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(total_carbonate) Then total_carbonate = Empty
    If IsMissing(total_sulfite) Then total_sulfite = Empty
    If IsMissing(total_sulfide) Then total_sulfide = Empty
    If IsMissing(total_acetate) Then total_acetate = Empty
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PH_FROM_STRONG_IONS = XLPy.CallUDF(PYTHON_MODULE, "WARP_PH_FROM_STRONG_IONS", _
        Array(CellsOf(alkalinity), CellsOf(total_carbonate), CellsOf(total_sulfite), _
        CellsOf(total_sulfide), CellsOf(total_acetate), CellsOf(effluent_temperature), _
        CellsOf(ionic_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PH_FROM_STRONG_IONS = CVErr(xlErrValue)
End Function

Public Function WARP_PH_UNDER_CARBON_DIOXIDE(ByVal alkalinity As Variant, _
        ByVal carbon_dioxide_pressure As Variant, Optional ByVal effluent_temperature As Variant, _
        Optional ByVal ionic_strength As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PH_UNDER_CARBON_DIOXIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_PH_UNDER_CARBON_DIOXIDE", _
        Array(CellsOf(alkalinity), CellsOf(carbon_dioxide_pressure), CellsOf(effluent_temperature), _
        CellsOf(ionic_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PH_UNDER_CARBON_DIOXIDE = CVErr(xlErrValue)
End Function

Public Function WARP_ACID_TO_REACH_PH(ByVal alkalinity As Variant, ByVal target_acidity As Variant, _
        Optional ByVal total_carbonate As Variant, Optional ByVal total_sulfite As Variant, _
        Optional ByVal total_acetate As Variant, Optional ByVal acid_per_charge As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(total_carbonate) Then total_carbonate = Empty
    If IsMissing(total_sulfite) Then total_sulfite = Empty
    If IsMissing(total_acetate) Then total_acetate = Empty
    If IsMissing(acid_per_charge) Then acid_per_charge = Empty
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ACID_TO_REACH_PH = XLPy.CallUDF(PYTHON_MODULE, "WARP_ACID_TO_REACH_PH", _
        Array(CellsOf(alkalinity), CellsOf(target_acidity), CellsOf(total_carbonate), _
        CellsOf(total_sulfite), CellsOf(total_acetate), CellsOf(acid_per_charge), _
        CellsOf(effluent_temperature), CellsOf(ionic_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ACID_TO_REACH_PH = CVErr(xlErrValue)
End Function

Public Function WARP_ACETIC_ACID_TO_REACH_PH(ByVal alkalinity As Variant, _
        ByVal target_acidity As Variant, Optional ByVal total_carbonate As Variant, _
        Optional ByVal total_sulfite As Variant, Optional ByVal total_acetate As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(total_carbonate) Then total_carbonate = Empty
    If IsMissing(total_sulfite) Then total_sulfite = Empty
    If IsMissing(total_acetate) Then total_acetate = Empty
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ACETIC_ACID_TO_REACH_PH = XLPy.CallUDF(PYTHON_MODULE, "WARP_ACETIC_ACID_TO_REACH_PH", _
        Array(CellsOf(alkalinity), CellsOf(target_acidity), CellsOf(total_carbonate), _
        CellsOf(total_sulfite), CellsOf(total_acetate), CellsOf(effluent_temperature), _
        CellsOf(ionic_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ACETIC_ACID_TO_REACH_PH = CVErr(xlErrValue)
End Function

Public Function WARP_CARBON_DIOXIDE_TO_REACH_PH(ByVal alkalinity As Variant, _
        ByVal target_acidity As Variant, Optional ByVal total_carbonate As Variant, _
        Optional ByVal total_sulfite As Variant, Optional ByVal total_acetate As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(total_carbonate) Then total_carbonate = Empty
    If IsMissing(total_sulfite) Then total_sulfite = Empty
    If IsMissing(total_acetate) Then total_acetate = Empty
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CARBON_DIOXIDE_TO_REACH_PH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CARBON_DIOXIDE_TO_REACH_PH", _
        Array(CellsOf(alkalinity), CellsOf(target_acidity), CellsOf(total_carbonate), _
        CellsOf(total_sulfite), CellsOf(total_acetate), CellsOf(effluent_temperature), _
        CellsOf(ionic_strength), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CARBON_DIOXIDE_TO_REACH_PH = CVErr(xlErrValue)
End Function

Public Function WARP_FLUE_GAS_FOR_CARBON_DIOXIDE(ByVal carbon_dioxide_demand As Variant, _
        ByVal gas_carbon_dioxide As Variant, ByVal gas_uptake As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FLUE_GAS_FOR_CARBON_DIOXIDE = XLPy.CallUDF(PYTHON_MODULE, "WARP_FLUE_GAS_FOR_CARBON_DIOXIDE", _
        Array(CellsOf(carbon_dioxide_demand), CellsOf(gas_carbon_dioxide), CellsOf(gas_uptake), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FLUE_GAS_FOR_CARBON_DIOXIDE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFATE_FROM_ACID(ByVal acid_demand As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFATE_FROM_ACID = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFATE_FROM_ACID", _
        Array(CellsOf(acid_demand), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFATE_FROM_ACID = CVErr(xlErrValue)
End Function

' Oxygen, gas and salt
Private Sub DescribeGroup14()
    Describe "WARP_OXYGEN_SATURATION", "Oxygen, gas and salt: Oxygen that fresh water holds under air of 1 atm. Gives: oxygen saturation [mg/L].", _
        Array("temperature of the effluent [degC], 0 to 100 degC", "unit of the result; left out: mg/L")
    Describe "WARP_OXYGEN_TAKEN_UP", "Oxygen, gas and salt: Oxygen that a water takes from the air in a time: the most that can be oxidised by it. Gives: oxygen taken up [mg/L].", _
        Array("rate constant of the surface, kLa [1/h], 0 to 50 1/h", _
        "oxygen that the water holds at most [mg/L], 0 to 50 mg/L", _
        "volume of the tank over the flow [h], 0.1 to 1000 h", _
        "oxygen in the water [mg/L], 0 to 50 mg/L; left out: 0 mg/L", _
        "unit of the result; left out: mg/L")
    Describe "WARP_SULFITE_FOR_OXYGEN", "Oxygen, gas and salt: Sodium sulfite (100 %) that takes up dissolved oxygen: the least, by the reaction. Gives: effluent concentration [mg/L].", _
        Array("oxygen in the water [mg/L], 0 to 50 mg/L", "unit of the result; left out: mg/L")
    Describe "WARP_HYDROGEN_SULFIDE_SHARE", "Oxygen, gas and salt: Share of the sulfide in a water that is hydrogen sulfide, a deadly gas: it leaves the water. Gives: substance share [%].", _
        Array("pH, 0 to 14", "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: %")
    Describe "WARP_SULFUR_DIOXIDE_SHARE", "Oxygen, gas and salt: Share of the sulfite in a water that is sulfur dioxide, a poisonous gas: it leaves the water. Gives: substance share [%].", _
        Array("pH, 0 to 14", "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: %")
    Describe "WARP_SULFITE_ION_SHARE", "Oxygen, gas and salt: Share of the sulfite in a water that is its doubly charged ion; the rest is bisulfite. Gives: substance share [%].", _
        Array("pH, 0 to 14", "temperature of the effluent [degC], 0 to 100 degC; left out: 25 degC", _
        "half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L; left out: 0 mol/L", _
        "unit of the result; left out: %")
    Describe "WARP_ACTIVITY_EXPONENT", "Oxygen, gas and salt: Power of ten of the activity coefficient of an ion; never above zero. Gives: activity exponent.", _
        Array("half the sum of concentration times charge squared [mol/L], 0 to 10 mol/L", _
        "charges on an ion, a whole number from 1 to 3; left out: 1", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_DEGRADED_SHARE", "Oxygen, gas and salt: BOD5 over COD: how far a biological works can take an effluent. Gives: substance share [%].", _
        Array("BOD5 [mg/L], 0 to 1,000,000 mg/L", "COD [mg/L], 0.001 to 1,000,000 mg/L", _
        "unit of the result; left out: %")
    Describe "WARP_SOLIDS_OVER_CONDUCTIVITY", "Oxygen, gas and salt: Dissolved solids for each unit of conductivity: from 0.2 in caustic to 0.9 in neutral salt. Gives: solids ratio [mg/L/(uS/cm)].", _
        Array("what stays when a water is dried [mg/L], 0 to 1,000,000 mg/L", _
        "conductivity at 25 degC [uS/cm], 1 to 1,000,000 uS/cm", _
        "unit of the result; left out: mg/L/(uS/cm)")
    Describe "WARP_EXPOSURE_OF_MIXTURE", "Oxygen, gas and salt: Exposure to gases that act alike, as the sum of their shares of their limits: above 1 is too much. Gives: exposure.", _
        Array("gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000", _
        "its limit, in ppm or mg/m3, 1e-06 to 1,000,000", _
        "gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000; left out: 0", _
        "its limit, in ppm or mg/m3, 1e-06 to 1,000,000; left out: 1", _
        "gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000; left out: 0", _
        "its limit, in ppm or mg/m3, 1e-06 to 1,000,000; left out: 1", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_MEAN_EXPOSURE", "Oxygen, gas and salt: Exposure as a mean of the shift, from what the air holds in its parts. Gives: exposure.", _
        Array("gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000", _
        "how long the air holds it [h], 0 to 24 h", _
        "gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000; left out: 0", _
        "how long the air holds it [h], 0 to 24 h; left out: 0 h", _
        "gas in the air, in ppm or mg/m3, as the limit beside it, 0 to 1,000,000; left out: 0", _
        "how long the air holds it [h], 0 to 24 h; left out: 0 h", _
        "what an exposure is a mean of [h], 1 to 24 h; left out: 8 h", _
        "unit of the result; left out: none, a pure number")
End Sub

Public Function WARP_OXYGEN_SATURATION(ByVal effluent_temperature As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_OXYGEN_SATURATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_OXYGEN_SATURATION", _
        Array(CellsOf(effluent_temperature), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_OXYGEN_SATURATION = CVErr(xlErrValue)
End Function

Public Function WARP_OXYGEN_TAKEN_UP(ByVal oxygen_transfer As Variant, _
        ByVal oxygen_saturation As Variant, ByVal residence_time As Variant, _
        Optional ByVal dissolved_oxygen As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(dissolved_oxygen) Then dissolved_oxygen = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_OXYGEN_TAKEN_UP = XLPy.CallUDF(PYTHON_MODULE, "WARP_OXYGEN_TAKEN_UP", _
        Array(CellsOf(oxygen_transfer), CellsOf(oxygen_saturation), CellsOf(residence_time), _
        CellsOf(dissolved_oxygen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_OXYGEN_TAKEN_UP = CVErr(xlErrValue)
End Function

Public Function WARP_SULFITE_FOR_OXYGEN(ByVal dissolved_oxygen As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFITE_FOR_OXYGEN = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFITE_FOR_OXYGEN", _
        Array(CellsOf(dissolved_oxygen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFITE_FOR_OXYGEN = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROGEN_SULFIDE_SHARE(ByVal acidity As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROGEN_SULFIDE_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROGEN_SULFIDE_SHARE", _
        Array(CellsOf(acidity), CellsOf(effluent_temperature), CellsOf(ionic_strength), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROGEN_SULFIDE_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFUR_DIOXIDE_SHARE(ByVal acidity As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFUR_DIOXIDE_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFUR_DIOXIDE_SHARE", _
        Array(CellsOf(acidity), CellsOf(effluent_temperature), CellsOf(ionic_strength), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFUR_DIOXIDE_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_SULFITE_ION_SHARE(ByVal acidity As Variant, _
        Optional ByVal effluent_temperature As Variant, Optional ByVal ionic_strength As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(effluent_temperature) Then effluent_temperature = Empty
    If IsMissing(ionic_strength) Then ionic_strength = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SULFITE_ION_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_SULFITE_ION_SHARE", _
        Array(CellsOf(acidity), CellsOf(effluent_temperature), CellsOf(ionic_strength), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SULFITE_ION_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_ACTIVITY_EXPONENT(ByVal ionic_strength As Variant, _
        Optional ByVal ion_charge As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(ion_charge) Then ion_charge = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ACTIVITY_EXPONENT = XLPy.CallUDF(PYTHON_MODULE, "WARP_ACTIVITY_EXPONENT", _
        Array(CellsOf(ionic_strength), CellsOf(ion_charge), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ACTIVITY_EXPONENT = CVErr(xlErrValue)
End Function

Public Function WARP_DEGRADED_SHARE(ByVal biochemical_demand As Variant, _
        ByVal chemical_demand As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DEGRADED_SHARE = XLPy.CallUDF(PYTHON_MODULE, "WARP_DEGRADED_SHARE", _
        Array(CellsOf(biochemical_demand), CellsOf(chemical_demand), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DEGRADED_SHARE = CVErr(xlErrValue)
End Function

Public Function WARP_SOLIDS_OVER_CONDUCTIVITY(ByVal dissolved_solids As Variant, _
        ByVal conductivity As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SOLIDS_OVER_CONDUCTIVITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_SOLIDS_OVER_CONDUCTIVITY", _
        Array(CellsOf(dissolved_solids), CellsOf(conductivity), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SOLIDS_OVER_CONDUCTIVITY = CVErr(xlErrValue)
End Function

Public Function WARP_EXPOSURE_OF_MIXTURE(ByVal first_exposure As Variant, _
        ByVal first_limit As Variant, Optional ByVal second_exposure As Variant, _
        Optional ByVal second_limit As Variant, Optional ByVal third_exposure As Variant, _
        Optional ByVal third_limit As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(second_exposure) Then second_exposure = Empty
    If IsMissing(second_limit) Then second_limit = Empty
    If IsMissing(third_exposure) Then third_exposure = Empty
    If IsMissing(third_limit) Then third_limit = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_EXPOSURE_OF_MIXTURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_EXPOSURE_OF_MIXTURE", _
        Array(CellsOf(first_exposure), CellsOf(first_limit), CellsOf(second_exposure), _
        CellsOf(second_limit), CellsOf(third_exposure), CellsOf(third_limit), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_EXPOSURE_OF_MIXTURE = CVErr(xlErrValue)
End Function

Public Function WARP_MEAN_EXPOSURE(ByVal first_exposure As Variant, ByVal first_time As Variant, _
        Optional ByVal second_exposure As Variant, Optional ByVal second_time As Variant, _
        Optional ByVal third_exposure As Variant, Optional ByVal third_time As Variant, _
        Optional ByVal shift As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(second_exposure) Then second_exposure = Empty
    If IsMissing(second_time) Then second_time = Empty
    If IsMissing(third_exposure) Then third_exposure = Empty
    If IsMissing(third_time) Then third_time = Empty
    If IsMissing(shift) Then shift = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MEAN_EXPOSURE = XLPy.CallUDF(PYTHON_MODULE, "WARP_MEAN_EXPOSURE", _
        Array(CellsOf(first_exposure), CellsOf(first_time), CellsOf(second_exposure), CellsOf(second_time), _
        CellsOf(third_exposure), CellsOf(third_time), CellsOf(shift), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MEAN_EXPOSURE = CVErr(xlErrValue)
End Function

' Treatment of the effluent
Private Sub DescribeGroup15()
    Describe "WARP_REMOVAL_FROM_CONCENTRATIONS", "Treatment of the effluent: Share of a parameter that a treatment step takes out, from what is measured before and behind it. Gives: removal [%].", _
        Array("concentration before the treatment step [mg/L], 1e-06 to 1,000,000 mg/L", _
        "concentration behind the treatment step [mg/L], 0 to 1,000,000 mg/L", _
        "unit of the result; left out: %")
    Describe "WARP_REMOVAL_IN_SERIES", "Treatment of the effluent: Removal of treatment steps in a row, each of what the one before leaves. Gives: removal [%].", _
        Array("removal of the first treatment step [%], 0 to 100 %", _
        "removal of the second treatment step [%], 0 to 100 %; left out: 0 %", _
        "removal of the third treatment step [%], 0 to 100 %; left out: 0 %", _
        "removal of the fourth treatment step [%], 0 to 100 %; left out: 0 %", _
        "unit of the result; left out: %")
    Describe "WARP_PEAK_BEHIND_TANK", "Treatment of the effluent: Peak that is left of a dump behind a mixed tank. Gives: peak left [%].", _
        Array("time in which a box or a bath is dumped [min], 1 to 1440 min", _
        "volume of the tank over the flow [h], 0.1 to 1000 h", "unit of the result; left out: %")
    Describe "WARP_BIOLOGICAL_SLUDGE", "Treatment of the effluent: Dry sludge that grows on the oxygen demand that biology removes. Gives: dry sludge [kg/day].", _
        Array("organic COD that biology removes [kg/day], 0 to 1,000,000 kg/day", _
        "volatile solids that grow for each mass of COD removed [kg/kg], 0 to 0.6 kg/kg", _
        "volatile part of the solids of biology [%], 30 to 100 %", _
        "unit of the result; left out: kg/day")
    Describe "WARP_BIOLOGY_OXYGEN", "Treatment of the effluent: Oxygen that biology takes: what is removed and not built into sludge, and the sulfur salts in full. Gives: oxygen needed [kg/day].", _
        Array("organic COD that biology removes [kg/day], 0 to 1,000,000 kg/day", _
        "volatile solids that grow for each mass of COD removed [kg/kg], 0 to 0.6 kg/kg", _
        "COD of sulfite, hydrosulfite, thiosulfate and sulfide [kg/day], 0 to 1,000,000 kg/day; left out: 0 kg/day", _
        "unit of the result; left out: kg/day")
    Describe "WARP_ALUM_SLUDGE", "Treatment of the effluent: Dry sludge that alum makes of itself, as hydroxide; what it catches comes on top. Gives: dry sludge [kg/day].", _
        Array("coagulant used [kg/day], 0 to 1,000,000 kg/day", _
        "mol of water of crystals in each mol of alum, 0 to 18; left out: 14.3", _
        "unit of the result; left out: kg/day")
    Describe "WARP_FERRIC_SLUDGE", "Treatment of the effluent: Dry sludge that ferric chloride (100 %) makes of itself, as hydroxide; what it catches comes on top. Gives: dry sludge [kg/day].", _
        Array("coagulant used [kg/day], 0 to 1,000,000 kg/day", "unit of the result; left out: kg/day")
    Describe "WARP_ALUM_ALKALINITY", "Treatment of the effluent: Alkalinity that alum uses up; its sulfate stays in the water. Gives: alkalinity [mmol/L].", _
        Array("coagulant in each volume of water [mg/L], 0 to 20000 mg/L", _
        "mol of water of crystals in each mol of alum, 0 to 18; left out: 14.3", _
        "unit of the result; left out: mmol/L")
    Describe "WARP_FERRIC_ALKALINITY", "Treatment of the effluent: Alkalinity that ferric chloride (100 %) uses up; its chloride stays in the water. Gives: alkalinity [mmol/L].", _
        Array("coagulant in each volume of water [mg/L], 0 to 20000 mg/L", _
        "unit of the result; left out: mmol/L")
    Describe "WARP_WET_CAKE", "Treatment of the effluent: Sludge as it leaves the press, to be carted away. Gives: sludge cake [kg/day].", _
        Array("dry solids of the sludge [kg/day], 0 to 1,000,000 kg/day", _
        "dry solids in the cake of the press [%], 1 to 95 %", _
        "unit of the result; left out: kg/day")
    Describe "WARP_SALT_IN_LOOP", "Treatment of the effluent: Salt in the effluent of a range that takes back a share of its water, once it has settled. Gives: effluent concentration [mg/L].", _
        Array("salt that range and treatment add to each volume of water [mg/L], 0 to 300,000 mg/L", _
        "share of the water taken by the range that is treated water [%], 0 to 99 %", _
        "share of the concentration that the membrane holds back [%], 0 to 100 %", _
        "salt in the fresh water [mg/L], 0 to 100,000 mg/L; left out: 0 mg/L", _
        "unit of the result; left out: mg/L")
    Describe "WARP_LARGEST_REUSE", "Treatment of the effluent: Largest share of treated water that keeps the salt in the water taken by the range below a ceiling. Gives: reuse share [%].", _
        Array("salt that the water taken by the range may hold [mg/L], 1 to 300,000 mg/L", _
        "salt that range and treatment add to each volume of water [mg/L], 0 to 300,000 mg/L", _
        "share of the concentration that the membrane holds back [%], 0 to 100 %", _
        "share of its feed that a membrane gives as treated water [%], 1 to 99 %", _
        "salt in the fresh water [mg/L], 0 to 100,000 mg/L; left out: 0 mg/L", _
        "unit of the result; left out: %")
    Describe "WARP_CONCENTRATE_FLOW", "Treatment of the effluent: Concentrate that a membrane sends away. Gives: flow per day [m3/day].", _
        Array("flow on a running day [m3/day], 0 to 1,000,000 m3/day", _
        "share of its feed that a membrane gives as treated water [%], 1 to 99 %", _
        "unit of the result; left out: m3/day")
    Describe "WARP_CONCENTRATE_STRENGTH", "Treatment of the effluent: Concentration in what a membrane sends away. Gives: effluent concentration [mg/L].", _
        Array("concentration in the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "share of the concentration that the membrane holds back [%], 0 to 100 %", _
        "share of its feed that a membrane gives as treated water [%], 1 to 99 %", _
        "unit of the result; left out: mg/L")
    Describe "WARP_CHARGE_BY_STRENGTH", "Treatment of the effluent: Charge for each volume of effluent by its strength, against the strength of ordinary sewage. Gives: effluent charge [money/m3].", _
        Array("sewer charge for taking in and conveying [money/m3], 0 to 10000 money/m3", _
        "sewer charge for treatment by volume alone [money/m3], 0 to 10000 money/m3", _
        "charge for biology at the reference strength [money/m3], 0 to 10000 money/m3", _
        "charge for sludge at the reference strength [money/m3], 0 to 10000 money/m3", _
        "oxygen demand of the effluent once settled [mg/L], 0 to 1,000,000 mg/L", _
        "suspended solids of the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "oxygen demand of ordinary sewage once settled [mg/L], 1 to 100,000 mg/L", _
        "suspended solids of ordinary sewage [mg/L], 1 to 100,000 mg/L", _
        "unit of the result; left out: money/m3")
End Sub

Public Function WARP_REMOVAL_FROM_CONCENTRATIONS(ByVal concentration_before As Variant, _
        ByVal concentration_after As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_REMOVAL_FROM_CONCENTRATIONS = XLPy.CallUDF(PYTHON_MODULE, "WARP_REMOVAL_FROM_CONCENTRATIONS", _
        Array(CellsOf(concentration_before), CellsOf(concentration_after), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_REMOVAL_FROM_CONCENTRATIONS = CVErr(xlErrValue)
End Function

Public Function WARP_REMOVAL_IN_SERIES(ByVal first_removal As Variant, _
        Optional ByVal second_removal As Variant, Optional ByVal third_removal As Variant, _
        Optional ByVal fourth_removal As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(second_removal) Then second_removal = Empty
    If IsMissing(third_removal) Then third_removal = Empty
    If IsMissing(fourth_removal) Then fourth_removal = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_REMOVAL_IN_SERIES = XLPy.CallUDF(PYTHON_MODULE, "WARP_REMOVAL_IN_SERIES", _
        Array(CellsOf(first_removal), CellsOf(second_removal), CellsOf(third_removal), _
        CellsOf(fourth_removal), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_REMOVAL_IN_SERIES = CVErr(xlErrValue)
End Function

Public Function WARP_PEAK_BEHIND_TANK(ByVal dump_time As Variant, ByVal residence_time As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PEAK_BEHIND_TANK = XLPy.CallUDF(PYTHON_MODULE, "WARP_PEAK_BEHIND_TANK", _
        Array(CellsOf(dump_time), CellsOf(residence_time), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PEAK_BEHIND_TANK = CVErr(xlErrValue)
End Function

Public Function WARP_BIOLOGICAL_SLUDGE(ByVal demand_removed As Variant, _
        ByVal sludge_yield As Variant, ByVal volatile_share As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BIOLOGICAL_SLUDGE = XLPy.CallUDF(PYTHON_MODULE, "WARP_BIOLOGICAL_SLUDGE", _
        Array(CellsOf(demand_removed), CellsOf(sludge_yield), CellsOf(volatile_share), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BIOLOGICAL_SLUDGE = CVErr(xlErrValue)
End Function

Public Function WARP_BIOLOGY_OXYGEN(ByVal demand_removed As Variant, ByVal sludge_yield As Variant, _
        Optional ByVal sulfur_demand As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(sulfur_demand) Then sulfur_demand = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_BIOLOGY_OXYGEN = XLPy.CallUDF(PYTHON_MODULE, "WARP_BIOLOGY_OXYGEN", _
        Array(CellsOf(demand_removed), CellsOf(sludge_yield), CellsOf(sulfur_demand), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_BIOLOGY_OXYGEN = CVErr(xlErrValue)
End Function

Public Function WARP_ALUM_SLUDGE(ByVal coagulant_used As Variant, _
        Optional ByVal crystal_water As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(crystal_water) Then crystal_water = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ALUM_SLUDGE = XLPy.CallUDF(PYTHON_MODULE, "WARP_ALUM_SLUDGE", _
        Array(CellsOf(coagulant_used), CellsOf(crystal_water), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ALUM_SLUDGE = CVErr(xlErrValue)
End Function

Public Function WARP_FERRIC_SLUDGE(ByVal coagulant_used As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FERRIC_SLUDGE = XLPy.CallUDF(PYTHON_MODULE, "WARP_FERRIC_SLUDGE", _
        Array(CellsOf(coagulant_used), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FERRIC_SLUDGE = CVErr(xlErrValue)
End Function

Public Function WARP_ALUM_ALKALINITY(ByVal coagulant_dose As Variant, _
        Optional ByVal crystal_water As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(crystal_water) Then crystal_water = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ALUM_ALKALINITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_ALUM_ALKALINITY", _
        Array(CellsOf(coagulant_dose), CellsOf(crystal_water), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ALUM_ALKALINITY = CVErr(xlErrValue)
End Function

Public Function WARP_FERRIC_ALKALINITY(ByVal coagulant_dose As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_FERRIC_ALKALINITY = XLPy.CallUDF(PYTHON_MODULE, "WARP_FERRIC_ALKALINITY", _
        Array(CellsOf(coagulant_dose), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_FERRIC_ALKALINITY = CVErr(xlErrValue)
End Function

Public Function WARP_WET_CAKE(ByVal dry_sludge As Variant, ByVal cake_dryness As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_WET_CAKE = XLPy.CallUDF(PYTHON_MODULE, "WARP_WET_CAKE", _
        Array(CellsOf(dry_sludge), CellsOf(cake_dryness), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_WET_CAKE = CVErr(xlErrValue)
End Function

Public Function WARP_SALT_IN_LOOP(ByVal salt_added As Variant, ByVal reuse_share As Variant, _
        ByVal membrane_rejection As Variant, Optional ByVal fresh_salt As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(fresh_salt) Then fresh_salt = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SALT_IN_LOOP = XLPy.CallUDF(PYTHON_MODULE, "WARP_SALT_IN_LOOP", _
        Array(CellsOf(salt_added), CellsOf(reuse_share), CellsOf(membrane_rejection), CellsOf(fresh_salt), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SALT_IN_LOOP = CVErr(xlErrValue)
End Function

Public Function WARP_LARGEST_REUSE(ByVal salt_ceiling As Variant, ByVal salt_added As Variant, _
        ByVal membrane_rejection As Variant, ByVal water_recovery As Variant, _
        Optional ByVal fresh_salt As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(fresh_salt) Then fresh_salt = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LARGEST_REUSE = XLPy.CallUDF(PYTHON_MODULE, "WARP_LARGEST_REUSE", _
        Array(CellsOf(salt_ceiling), CellsOf(salt_added), CellsOf(membrane_rejection), _
        CellsOf(water_recovery), CellsOf(fresh_salt), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LARGEST_REUSE = CVErr(xlErrValue)
End Function

Public Function WARP_CONCENTRATE_FLOW(ByVal flow_per_day As Variant, _
        ByVal water_recovery As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATE_FLOW = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATE_FLOW", _
        Array(CellsOf(flow_per_day), CellsOf(water_recovery), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATE_FLOW = CVErr(xlErrValue)
End Function

Public Function WARP_CONCENTRATE_STRENGTH(ByVal effluent_concentration As Variant, _
        ByVal membrane_rejection As Variant, ByVal water_recovery As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATE_STRENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATE_STRENGTH", _
        Array(CellsOf(effluent_concentration), CellsOf(membrane_rejection), CellsOf(water_recovery), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATE_STRENGTH = CVErr(xlErrValue)
End Function

Public Function WARP_CHARGE_BY_STRENGTH(ByVal reception_charge As Variant, _
        ByVal volume_charge As Variant, ByVal biology_charge As Variant, _
        ByVal sludge_charge As Variant, ByVal settled_demand As Variant, _
        ByVal settleable_solids As Variant, ByVal reference_demand As Variant, _
        ByVal reference_solids As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CHARGE_BY_STRENGTH = XLPy.CallUDF(PYTHON_MODULE, "WARP_CHARGE_BY_STRENGTH", _
        Array(CellsOf(reception_charge), CellsOf(volume_charge), CellsOf(biology_charge), _
        CellsOf(sludge_charge), CellsOf(settled_demand), CellsOf(settleable_solids), _
        CellsOf(reference_demand), CellsOf(reference_solids), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CHARGE_BY_STRENGTH = CVErr(xlErrValue)
End Function

' Limits and day values
Private Sub DescribeGroup16()
    Describe "WARP_LOAD_LIMIT_PER_DAY", "Limits and day values: Load that a limit for each mass of product allows in a day: one block of a sum over products. Gives: daily load [kg/day].", _
        Array("limit of a load, for each mass of product [kg/t], 0 to 5000 kg/t", _
        "product that the limit counts, over all of the day [kg/day], 0 to 100,000,000 kg/day", _
        "unit of the result; left out: kg/day")
    Describe "WARP_LOAD_SHARE_OF_LIMIT", "Limits and day values: Share of a load limit that an estimate takes. Gives: limit share [%].", _
        Array("mass of a parameter in the effluent [g/kg], 0 to 5000 g/kg", _
        "limit of a load, for each mass of product [kg/t], 0 to 5000 kg/t", _
        "unit of the result; left out: %")
    Describe "WARP_CONCENTRATION_SHARE_OF_LIMIT", "Limits and day values: Share of a concentration limit that an estimate takes. Gives: limit share [%].", _
        Array("concentration in the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "limit of a concentration [mg/L], 0 to 1,000,000 mg/L", "unit of the result; left out: %")
    Describe "WARP_CONCENTRATION_AT_REFERENCE_FLOW", "Limits and day values: Concentration as it would be in a reference flow, where more water than that is used. Gives: effluent concentration [mg/L].", _
        Array("concentration in the effluent [mg/L], 0 to 1,000,000 mg/L", _
        "effluent [L/kg], 0 to 1000 L/kg", _
        "effluent up to which a limit allows no dilution [L/kg], 0.1 to 1000 L/kg", _
        "unit of the result; left out: mg/L")
    Describe "WARP_ABSORPTION_COEFFICIENT", "Limits and day values: Colour of a filtered sample as light taken up for each metre, at one wavelength. Gives: absorption coefficient [1/m].", _
        Array("light taken up in the cell, as a power of ten, filtered sample, 0 to 10", _
        "path of the light through the sample [mm], 1 to 500 mm", _
        "unit of the result; left out: 1/m")
    Describe "WARP_LOG_SPREAD_OF_VARIATION", "Limits and day values: Standard deviation of the logarithm of day values, from their coefficient of variation. Gives: log spread.", _
        Array("spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_PERCENTILE_OVER_MEAN", "Limits and day values: Value below which a share of the days lies, over the long-term mean: a peak factor. Gives: peak factor.", _
        Array("share of the values that lie below [%], 0.01 to 99.99 %", _
        "spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_VARIATION_FROM_PEAK", "Limits and day values: Coefficient of variation of day values that makes a high day so many times the mean. Gives: day variation [%].", _
        Array("high value over the mean, or over a mean of days, 0 to 1000", _
        "share of the values that lie below [%], 0.01 to 99.99 %", _
        "unit of the result; left out: %")
    Describe "WARP_CHANCE_ABOVE_LIMIT", "Limits and day values: Chance that one day value is above a limit, from the long-term mean as a share of that limit. Gives: exceedance chance [%].", _
        Array("long-term mean, of the limit [%], 0 to 1,000,000,000 %", _
        "spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "unit of the result; left out: %")
    Describe "WARP_CHANCE_ANY_ABOVE_LIMIT", "Limits and day values: Chance that at least one of some values is above a limit, each value by itself. Gives: exceedance chance [%].", _
        Array("chance that one value lies above the limit [%], 0 to 100 %", _
        "values that are held against the limit, a whole number from 1 to 10000", _
        "unit of the result; left out: %")
    Describe "WARP_VARIATION_OF_MEAN", "Limits and day values: Coefficient of variation of a mean of days, each day by itself. Gives: day variation [%].", _
        Array("spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "days of which the mean is taken, a whole number from 1 to 366", _
        "unit of the result; left out: %")
    Describe "WARP_DAY_PEAK_OVER_MEAN_PEAK", "Limits and day values: High day over the high mean of days, both at the same percentile: a day's limit over that of a mean. Gives: peak factor.", _
        Array("spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "days of which the mean is taken, a whole number from 1 to 366", _
        "share of the values that lie below [%], 0.01 to 99.99 %", _
        "unit of the result; left out: none, a pure number")
    Describe "WARP_MEAN_FOR_CHANCE", "Limits and day values: Long-term mean, as a share of a limit, at which one day value is above the limit by a given chance. Gives: limit share [%].", _
        Array("chance of a value above the limit that is accepted [%], 0.01 to 99.99 %", _
        "spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "unit of the result; left out: %")
    Describe "WARP_VARIATION_WITH_ESTIMATE", "Limits and day values: Coefficient of variation of day values around an estimate that has a spread of its own. Gives: day variation [%].", _
        Array("spread of day values around their mean (coefficient of variation) [%], 0 to 300 %", _
        "standard deviation of the estimate itself, of the estimate [%], 0 to 500 %", _
        "unit of the result; left out: %")
End Sub

Public Function WARP_LOAD_LIMIT_PER_DAY(ByVal load_limit As Variant, _
        ByVal daily_production As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOAD_LIMIT_PER_DAY = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOAD_LIMIT_PER_DAY", _
        Array(CellsOf(load_limit), CellsOf(daily_production), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOAD_LIMIT_PER_DAY = CVErr(xlErrValue)
End Function

Public Function WARP_LOAD_SHARE_OF_LIMIT(ByVal load As Variant, ByVal load_limit As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOAD_SHARE_OF_LIMIT = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOAD_SHARE_OF_LIMIT", _
        Array(CellsOf(load), CellsOf(load_limit), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOAD_SHARE_OF_LIMIT = CVErr(xlErrValue)
End Function

Public Function WARP_CONCENTRATION_SHARE_OF_LIMIT(ByVal effluent_concentration As Variant, _
        ByVal concentration_limit As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATION_SHARE_OF_LIMIT = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATION_SHARE_OF_LIMIT", _
        Array(CellsOf(effluent_concentration), CellsOf(concentration_limit), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATION_SHARE_OF_LIMIT = CVErr(xlErrValue)
End Function

Public Function WARP_CONCENTRATION_AT_REFERENCE_FLOW(ByVal effluent_concentration As Variant, _
        ByVal effluent_volume As Variant, ByVal reference_volume As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CONCENTRATION_AT_REFERENCE_FLOW = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONCENTRATION_AT_REFERENCE_FLOW", _
        Array(CellsOf(effluent_concentration), CellsOf(effluent_volume), CellsOf(reference_volume), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONCENTRATION_AT_REFERENCE_FLOW = CVErr(xlErrValue)
End Function

Public Function WARP_ABSORPTION_COEFFICIENT(ByVal absorbance As Variant, _
        ByVal cell_length As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_ABSORPTION_COEFFICIENT = XLPy.CallUDF(PYTHON_MODULE, "WARP_ABSORPTION_COEFFICIENT", _
        Array(CellsOf(absorbance), CellsOf(cell_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_ABSORPTION_COEFFICIENT = CVErr(xlErrValue)
End Function

Public Function WARP_LOG_SPREAD_OF_VARIATION(ByVal day_variation As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_LOG_SPREAD_OF_VARIATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_LOG_SPREAD_OF_VARIATION", _
        Array(CellsOf(day_variation), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_LOG_SPREAD_OF_VARIATION = CVErr(xlErrValue)
End Function

Public Function WARP_PERCENTILE_OVER_MEAN(ByVal percentile As Variant, _
        ByVal day_variation As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PERCENTILE_OVER_MEAN = XLPy.CallUDF(PYTHON_MODULE, "WARP_PERCENTILE_OVER_MEAN", _
        Array(CellsOf(percentile), CellsOf(day_variation), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PERCENTILE_OVER_MEAN = CVErr(xlErrValue)
End Function

Public Function WARP_VARIATION_FROM_PEAK(ByVal peak_factor As Variant, ByVal percentile As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VARIATION_FROM_PEAK = XLPy.CallUDF(PYTHON_MODULE, "WARP_VARIATION_FROM_PEAK", _
        Array(CellsOf(peak_factor), CellsOf(percentile), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VARIATION_FROM_PEAK = CVErr(xlErrValue)
End Function

Public Function WARP_CHANCE_ABOVE_LIMIT(ByVal limit_share As Variant, _
        ByVal day_variation As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CHANCE_ABOVE_LIMIT = XLPy.CallUDF(PYTHON_MODULE, "WARP_CHANCE_ABOVE_LIMIT", _
        Array(CellsOf(limit_share), CellsOf(day_variation), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CHANCE_ABOVE_LIMIT = CVErr(xlErrValue)
End Function

Public Function WARP_CHANCE_ANY_ABOVE_LIMIT(ByVal exceedance_chance As Variant, _
        ByVal values_taken As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_CHANCE_ANY_ABOVE_LIMIT = XLPy.CallUDF(PYTHON_MODULE, "WARP_CHANCE_ANY_ABOVE_LIMIT", _
        Array(CellsOf(exceedance_chance), CellsOf(values_taken), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CHANCE_ANY_ABOVE_LIMIT = CVErr(xlErrValue)
End Function

Public Function WARP_VARIATION_OF_MEAN(ByVal day_variation As Variant, _
        ByVal days_averaged As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VARIATION_OF_MEAN = XLPy.CallUDF(PYTHON_MODULE, "WARP_VARIATION_OF_MEAN", _
        Array(CellsOf(day_variation), CellsOf(days_averaged), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VARIATION_OF_MEAN = CVErr(xlErrValue)
End Function

Public Function WARP_DAY_PEAK_OVER_MEAN_PEAK(ByVal day_variation As Variant, _
        ByVal days_averaged As Variant, ByVal percentile As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DAY_PEAK_OVER_MEAN_PEAK = XLPy.CallUDF(PYTHON_MODULE, "WARP_DAY_PEAK_OVER_MEAN_PEAK", _
        Array(CellsOf(day_variation), CellsOf(days_averaged), CellsOf(percentile), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DAY_PEAK_OVER_MEAN_PEAK = CVErr(xlErrValue)
End Function

Public Function WARP_MEAN_FOR_CHANCE(ByVal accepted_chance As Variant, _
        ByVal day_variation As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MEAN_FOR_CHANCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_MEAN_FOR_CHANCE", _
        Array(CellsOf(accepted_chance), CellsOf(day_variation), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MEAN_FOR_CHANCE = CVErr(xlErrValue)
End Function

Public Function WARP_VARIATION_WITH_ESTIMATE(ByVal day_variation As Variant, _
        ByVal estimate_spread As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_VARIATION_WITH_ESTIMATE = XLPy.CallUDF(PYTHON_MODULE, "WARP_VARIATION_WITH_ESTIMATE", _
        Array(CellsOf(day_variation), CellsOf(estimate_spread), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_VARIATION_WITH_ESTIMATE = CVErr(xlErrValue)
End Function

' The mill's book
Private Sub DescribeGroup17()
    Describe "WARP_OPENED_BOOK", "The mill's book: Read the mill's book from its sheets; the other functions of this group take the text it gives. Gives: a mark of the book.", _
        Array("the sheet Enquiries, its whole range from A1 on", _
        "the sheet Styles, its whole range from A1 on", _
        "the sheet Recipes, its whole range from A1 on", _
        "the sheet Ranges, its whole range from A1 on", _
        "the sheet Routes, its whole range from A1 on", _
        "the sheet Materials, its whole range from A1 on", _
        "the sheet Mill costs, its whole range from A1 on", _
        "the sheet How sure, its whole range from A1 on", _
        "the sheet Quote texts, its whole range from A1 on", _
        "the sheet Discharge points, its whole range from A1 on", _
        "the sheet Discharge plan, its whole range from A1 on", _
        "the sheet Treatment, its whole range from A1 on", _
        "the sheet Permit, its whole range from A1 on", _
        "the sheet Quality, its whole range from A1 on", _
        "the sheet Offers, its whole range from A1 on", _
        "the sheet Calibrations, its whole range from A1 on")
    Describe "WARP_RESULT_TABLE", "The mill's book: One table of results with its heads: of one enquiry, or of all. Gives: titles, units and rows.", _
        Array("the cell of WARP_OPENED_BOOK", _
        "one of: quotes, key_figures, cost_by_group, cost_by_step, seconds, shade_lots, compare, use, dye_bath, discharge_loads, discharge_concentrations, discharge_by_parameter, cloth_plan, order_plan, checks, defaults_taken, cost_lines, prices, ledger,...", _
        "a code of the sheet Enquiries; left out: all of them", _
        "rows of the range, which are filled up; left out: as many as there are")
    Describe "WARP_USE_PER_KG", "The mill's book: What an enquiry takes per kilogram of grey yarn sold, fills, stops and leaders in. Gives: use [g/kg, L/kg, kg/kg, kWh/kg].", _
        Array("the cell of WARP_OPENED_BOOK", _
        "code of a material, as delivered; a substance or role, as 100 %; water, steam or power", _
        "a code of the sheet Enquiries", "unit of the result; left out: the usual one")
    Describe "WARP_USE_PER_METRE", "The mill's book: What an enquiry takes per metre of finished cloth, or of another basis. Gives: use [g/m and so on].", _
        Array("the cell of WARP_OPENED_BOOK", _
        "code of a material, as delivered; a substance or role, as 100 %; water, steam or power", _
        "a code of the sheet Enquiries", _
        "kg of grey yarn, m of finished cloth and so on; left out: the usual one", _
        "unit of the result; left out: the usual one")
    Describe "WARP_USE_OF_ORDER", "The mill's book: What a whole order takes. Gives: use [kg, L].", _
        Array("the cell of WARP_OPENED_BOOK", _
        "code of a material, as delivered; a substance or role, as 100 %; water, steam or power", _
        "a code of the sheet Enquiries", "unit of the result; left out: the usual one")
    Describe "WARP_RUNNING_USE_PER_KG", "The mill's book: What a recipe takes on a range while it runs, per kilogram of yarn: no fill, no stop, no leader. Gives: use [g/kg, L/kg, kg/kg, kWh/kg].", _
        Array("the cell of WARP_OPENED_BOOK", _
        "code of a material, as delivered; a substance or role, as 100 %; water, steam or power", _
        "a code of the sheet Recipes", "a code of the sheet Ranges", _
        "a code of the sheet Styles: its warp sets the throughput", _
        "sets that run side by side; left out: 1", "unit of the result; left out: the usual one")
    Describe "WARP_COST_ON", "The mill's book: Cost of an enquiry on a basis: all of it, or a cost group, a step or a material. Gives: money of the mill.", _
        Array("the cell of WARP_OPENED_BOOK", "a code of the sheet Enquiries", _
        "kg of grey yarn, m of finished cloth and so on; left out: the usual one", _
        "a cost group, a step or a material; left out: all")
    Describe "WARP_PRICE_ON", "The mill's book: Selling price of an enquiry on a basis, with its margin, not rounded. Gives: money of the mill.", _
        Array("the cell of WARP_OPENED_BOOK", "a code of the sheet Enquiries", _
        "kg of grey yarn, m of finished cloth and so on; left out: the usual one")
    Describe "WARP_DISCHARGE_LOAD", "The mill's book: Load of a parameter in a stream, or in all, per kilogram of grey yarn: an estimate, no measurement. Gives: load [g/kg], flow [L/kg].", _
        Array("the cell of WARP_OPENED_BOOK", "COD, sodium, sulfate, flow and so on", _
        "a code of the sheet Enquiries", "name of a stream; left out: all streams", _
        "unit of the result; left out: the usual one")
    Describe "WARP_DISCHARGE_CONCENTRATION", "The mill's book: Concentration of a parameter in a stream, before any treatment: an estimate, no measurement. Gives: concentration [mg/L].", _
        Array("the cell of WARP_OPENED_BOOK", "COD, sodium, sulfate, flow and so on", _
        "a code of the sheet Enquiries", "name of a stream; left out: all streams", _
        "unit of the result; left out: the usual one")
End Sub

Public Function WARP_OPENED_BOOK(ByVal enquiries As Variant, ByVal styles As Variant, _
        ByVal recipes As Variant, ByVal ranges As Variant, ByVal routes As Variant, _
        ByVal materials As Variant, ByVal mill_costs As Variant, ByVal how_sure As Variant, _
        ByVal quote_texts As Variant, ByVal discharge_points As Variant, _
        ByVal discharge_plan As Variant, ByVal treatment As Variant, ByVal permit As Variant, _
        ByVal quality As Variant, Optional ByVal offers As Variant, _
        Optional ByVal calibrations As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(offers) Then offers = Empty
    If IsMissing(calibrations) Then calibrations = Empty
    WARP_OPENED_BOOK = XLPy.CallUDF(PYTHON_MODULE, "WARP_OPENED_BOOK", _
        Array(CellsOf(enquiries), CellsOf(styles), CellsOf(recipes), CellsOf(ranges), CellsOf(routes), _
        CellsOf(materials), CellsOf(mill_costs), CellsOf(how_sure), CellsOf(quote_texts), _
        CellsOf(discharge_points), CellsOf(discharge_plan), CellsOf(treatment), CellsOf(permit), _
        CellsOf(quality), CellsOf(offers), CellsOf(calibrations)))
    Exit Function
Refused:
    WARP_OPENED_BOOK = CVErr(xlErrValue)
End Function

Public Function WARP_RESULT_TABLE(ByVal book As Variant, ByVal table As Variant, _
        Optional ByVal enquiry As Variant, Optional ByVal rows As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(enquiry) Then enquiry = Empty
    If IsMissing(rows) Then rows = Empty
    WARP_RESULT_TABLE = XLPy.CallUDF(PYTHON_MODULE, "WARP_RESULT_TABLE", _
        Array(CellsOf(book), CellsOf(table), CellsOf(enquiry), CellsOf(rows)))
    Exit Function
Refused:
    WARP_RESULT_TABLE = CVErr(xlErrValue)
End Function

Public Function WARP_USE_PER_KG(ByVal book As Variant, ByVal what As Variant, _
        ByVal enquiry As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_USE_PER_KG = XLPy.CallUDF(PYTHON_MODULE, "WARP_USE_PER_KG", _
        Array(CellsOf(book), CellsOf(what), CellsOf(enquiry), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_USE_PER_KG = CVErr(xlErrValue)
End Function

Public Function WARP_USE_PER_METRE(ByVal book As Variant, ByVal what As Variant, _
        ByVal enquiry As Variant, Optional ByVal basis As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(basis) Then basis = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_USE_PER_METRE = XLPy.CallUDF(PYTHON_MODULE, "WARP_USE_PER_METRE", _
        Array(CellsOf(book), CellsOf(what), CellsOf(enquiry), CellsOf(basis), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_USE_PER_METRE = CVErr(xlErrValue)
End Function

Public Function WARP_USE_OF_ORDER(ByVal book As Variant, ByVal what As Variant, _
        ByVal enquiry As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_USE_OF_ORDER = XLPy.CallUDF(PYTHON_MODULE, "WARP_USE_OF_ORDER", _
        Array(CellsOf(book), CellsOf(what), CellsOf(enquiry), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_USE_OF_ORDER = CVErr(xlErrValue)
End Function

Public Function WARP_RUNNING_USE_PER_KG(ByVal book As Variant, ByVal what As Variant, _
        ByVal recipe As Variant, ByVal range_code As Variant, ByVal style As Variant, _
        Optional ByVal sets As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(sets) Then sets = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_RUNNING_USE_PER_KG = XLPy.CallUDF(PYTHON_MODULE, "WARP_RUNNING_USE_PER_KG", _
        Array(CellsOf(book), CellsOf(what), CellsOf(recipe), CellsOf(range_code), CellsOf(style), _
        CellsOf(sets), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_RUNNING_USE_PER_KG = CVErr(xlErrValue)
End Function

Public Function WARP_COST_ON(ByVal book As Variant, ByVal enquiry As Variant, _
        Optional ByVal basis As Variant, Optional ByVal part As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(basis) Then basis = Empty
    If IsMissing(part) Then part = Empty
    WARP_COST_ON = XLPy.CallUDF(PYTHON_MODULE, "WARP_COST_ON", _
        Array(CellsOf(book), CellsOf(enquiry), CellsOf(basis), CellsOf(part)))
    Exit Function
Refused:
    WARP_COST_ON = CVErr(xlErrValue)
End Function

Public Function WARP_PRICE_ON(ByVal book As Variant, ByVal enquiry As Variant, _
        Optional ByVal basis As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(basis) Then basis = Empty
    WARP_PRICE_ON = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRICE_ON", _
        Array(CellsOf(book), CellsOf(enquiry), CellsOf(basis)))
    Exit Function
Refused:
    WARP_PRICE_ON = CVErr(xlErrValue)
End Function

Public Function WARP_DISCHARGE_LOAD(ByVal book As Variant, ByVal parameter As Variant, _
        ByVal enquiry As Variant, Optional ByVal stream As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(stream) Then stream = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DISCHARGE_LOAD = XLPy.CallUDF(PYTHON_MODULE, "WARP_DISCHARGE_LOAD", _
        Array(CellsOf(book), CellsOf(parameter), CellsOf(enquiry), CellsOf(stream), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DISCHARGE_LOAD = CVErr(xlErrValue)
End Function

Public Function WARP_DISCHARGE_CONCENTRATION(ByVal book As Variant, ByVal parameter As Variant, _
        ByVal enquiry As Variant, Optional ByVal stream As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(stream) Then stream = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DISCHARGE_CONCENTRATION = XLPy.CallUDF(PYTHON_MODULE, "WARP_DISCHARGE_CONCENTRATION", _
        Array(CellsOf(book), CellsOf(parameter), CellsOf(enquiry), CellsOf(stream), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DISCHARGE_CONCENTRATION = CVErr(xlErrValue)
End Function

' Look-ups, sets and the program
Private Sub DescribeGroup18()
    Describe "WARP_REASON_FOR", "Look-ups, sets and the program: Why a formula with these arguments is an error; an empty text where it is none. Gives: one line, or an empty text.", _
        Array("name of the formula, such as WARP_CARRIED_BY_LIQUOR", _
        "its arguments, as that formula has them")
    Describe "WARP_CONVERTED_VALUE", "Look-ups, sets and the program: Read a number in one unit in another one. Gives: the value in the other unit.", _
        Array("a number", "its unit, such as Ne", "unit of the result, such as tex")
    Describe "WARP_CAUTION_FOR", "Look-ups, sets and the program: The usual cautions for a material of the list or a group of materials, and to whom they defer. Gives: cautions, to be read beside the supplier's safety data sheet.", _
        Array("material or group of materials, such as caustic_lye_50 or hydrosulfite")
    Describe "WARP_DEFAULT_LOW", "Look-ups, sets and the program: Low end of the band of a default. Gives: the value.", _
        Array("group and quantity, such as indigo.bath_hydrosulfite", _
        "unit of the result; left out: that of the table")
    Describe "WARP_DEFAULT_TYPICAL", "Look-ups, sets and the program: Typical value of a default: what an empty setting takes. Gives: the value.", _
        Array("group and quantity, such as indigo.bath_hydrosulfite", _
        "unit of the result; left out: that of the table")
    Describe "WARP_DEFAULT_HIGH", "Look-ups, sets and the program: High end of the band of a default. Gives: the value.", _
        Array("group and quantity, such as indigo.bath_hydrosulfite", _
        "unit of the result; left out: that of the table")
    Describe "WARP_DEFAULT_SOURCE", "Look-ups, sets and the program: Value and band of a default, where they come from, and what else a reader should know. Gives: value, band, source and note.", _
        Array("group and quantity, such as indigo.bath_hydrosulfite")
    Describe "WARP_MOLAR_MASS", "Look-ups, sets and the program: Mass of one mol of a substance, from its formula. Gives: molar mass [g/mol].", _
        Array("element symbols and numbers, such as NaOH or Na2S.9H2O", _
        "unit of the result; left out: g/mol")
    Describe "WARP_THEORETICAL_OXYGEN_DEMAND", "Look-ups, sets and the program: Oxygen that the full oxidation of a substance takes, from its formula. Gives: oxygen per mass of the substance [kg/kg].", _
        Array("element symbols and numbers, such as NaOH or Na2S.9H2O", _
        "what nitrogen ends as, ammonium or nitrate; left out: ammonium", _
        "unit of the result; left out: kg/kg")
    Describe "WARP_PUBLISHED_LOW", "Look-ups, sets and the program: Low end of a range to compare a result with. Gives: the value.", _
        Array("key of the range, such as water_rope_usual", _
        "unit of the result; left out: that of the table")
    Describe "WARP_PUBLISHED_HIGH", "Look-ups, sets and the program: High end of a range to compare a result with. Gives: the value.", _
        Array("key of the range, such as water_rope_usual", _
        "unit of the result; left out: that of the table")
    Describe "WARP_PUBLISHED_RANGE", "Look-ups, sets and the program: A range to compare a result with, and its source; published only where that is a publication. Gives: range, source and note.", _
        Array("key of the range, such as water_rope_usual")
    Describe "WARP_SUBLOTS_OF_SET", "Look-ups, sets and the program: Lettered sub-lots of a long set, from the top of the tub: letter, place in the tub, length. Gives: rows of letter, place in the tub, length [m].", _
        Array("length of one set [m], 1 to 200,000 m", _
        "length of one lettered sub-lot [m], 1 to 200,000 m", "unit of the result; left out: m")
    Describe "WARP_HYDROSULFITE_BY_DIP", "Look-ups, sets and the program: Hydrosulfite in the liquor on the yarn behind each dip, wet on wet: dip, concentration. Gives: rows of dip, concentration [g/L].", _
        Array("dip boxes used, or passes through one box, a whole number from 1 to 24", _
        "share of the liquor on the yarn that a box replaces [%], 5 to 100 %", _
        "share of the carried hydrosulfite that one sky destroys [%], 0 to 100 %", _
        "hydrosulfite (100 %) in the dye bath [g/L], 0 to 20 g/L", _
        "unit of the result; left out: g/L")
    Describe "WARP_PROGRAM_VERSION", "Look-ups, sets and the program: Version of the program. Gives: version.", _
        Array()
    Describe "WARP_TABLES_FINGERPRINT", "Look-ups, sets and the program: A short mark of the content of all reference tables: one other figure, another mark. Gives: twelve letters and figures.", _
        Array()
    Describe "WARP_PROGRAM_INTERPRETER", "Look-ups, sets and the program: The Python that calculates the formulas, and the larger libraries that it has loaded. Gives: one line.", _
        Array()
    Describe "WARP_PRESET_LIMIT", "Look-ups, sets and the program: Limit of a regulation that was read; verify it with your permit. Gives: the value.", _
        Array("name of the preset, such as us_410_g_bpt", "as the regulation has it, such as COD", _
        "such as any one day, or mean of 30 days; may be left out where the parameter has one only", _
        "unit of the result; left out: that of the table")
    Describe "WARP_PRESET_LIMIT_TEXT", "Look-ups, sets and the program: Limit of a regulation in words: value, statistic, point, section, edition, and what to verify. Gives: limit, section, edition and note.", _
        Array("name of the preset, such as us_410_g_bpt", "as the regulation has it, such as COD", _
        "such as any one day, or mean of 30 days; may be left out where the parameter has one only")
End Sub

Public Function WARP_REASON_FOR(ByVal name As Variant, ParamArray arguments() As Variant) As Variant
    On Error GoTo Refused
    Dim handed() As Variant
    Dim place As Long
    handed = Array(CellsOf(name))
    ReDim Preserve handed(0 To 1 + UBound(arguments))
    For place = 0 To UBound(arguments)
        If Not IsMissing(arguments(place)) Then _
            handed(1 + place) = CellsOf(arguments(place))
    Next place
    WARP_REASON_FOR = XLPy.CallUDF(PYTHON_MODULE, "WARP_REASON_FOR", handed)
    Exit Function
Refused:
    WARP_REASON_FOR = CVErr(xlErrValue)
End Function

Public Function WARP_CONVERTED_VALUE(ByVal value As Variant, ByVal unit As Variant, _
        ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    WARP_CONVERTED_VALUE = XLPy.CallUDF(PYTHON_MODULE, "WARP_CONVERTED_VALUE", _
        Array(CellsOf(value), CellsOf(unit), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_CONVERTED_VALUE = CVErr(xlErrValue)
End Function

Public Function WARP_CAUTION_FOR(ByVal key As Variant) As Variant
    On Error GoTo Refused
    WARP_CAUTION_FOR = XLPy.CallUDF(PYTHON_MODULE, "WARP_CAUTION_FOR", _
        Array(CellsOf(key)))
    Exit Function
Refused:
    WARP_CAUTION_FOR = CVErr(xlErrValue)
End Function

Public Function WARP_DEFAULT_LOW(ByVal key As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DEFAULT_LOW = XLPy.CallUDF(PYTHON_MODULE, "WARP_DEFAULT_LOW", _
        Array(CellsOf(key), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DEFAULT_LOW = CVErr(xlErrValue)
End Function

Public Function WARP_DEFAULT_TYPICAL(ByVal key As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DEFAULT_TYPICAL = XLPy.CallUDF(PYTHON_MODULE, "WARP_DEFAULT_TYPICAL", _
        Array(CellsOf(key), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DEFAULT_TYPICAL = CVErr(xlErrValue)
End Function

Public Function WARP_DEFAULT_HIGH(ByVal key As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_DEFAULT_HIGH = XLPy.CallUDF(PYTHON_MODULE, "WARP_DEFAULT_HIGH", _
        Array(CellsOf(key), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_DEFAULT_HIGH = CVErr(xlErrValue)
End Function

Public Function WARP_DEFAULT_SOURCE(ByVal key As Variant) As Variant
    On Error GoTo Refused
    WARP_DEFAULT_SOURCE = XLPy.CallUDF(PYTHON_MODULE, "WARP_DEFAULT_SOURCE", _
        Array(CellsOf(key)))
    Exit Function
Refused:
    WARP_DEFAULT_SOURCE = CVErr(xlErrValue)
End Function

Public Function WARP_MOLAR_MASS(ByVal formula As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_MOLAR_MASS = XLPy.CallUDF(PYTHON_MODULE, "WARP_MOLAR_MASS", _
        Array(CellsOf(formula), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_MOLAR_MASS = CVErr(xlErrValue)
End Function

Public Function WARP_THEORETICAL_OXYGEN_DEMAND(ByVal formula As Variant, _
        Optional ByVal nitrogen As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(nitrogen) Then nitrogen = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_THEORETICAL_OXYGEN_DEMAND = XLPy.CallUDF(PYTHON_MODULE, "WARP_THEORETICAL_OXYGEN_DEMAND", _
        Array(CellsOf(formula), CellsOf(nitrogen), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_THEORETICAL_OXYGEN_DEMAND = CVErr(xlErrValue)
End Function

Public Function WARP_PUBLISHED_LOW(ByVal key As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PUBLISHED_LOW = XLPy.CallUDF(PYTHON_MODULE, "WARP_PUBLISHED_LOW", _
        Array(CellsOf(key), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PUBLISHED_LOW = CVErr(xlErrValue)
End Function

Public Function WARP_PUBLISHED_HIGH(ByVal key As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PUBLISHED_HIGH = XLPy.CallUDF(PYTHON_MODULE, "WARP_PUBLISHED_HIGH", _
        Array(CellsOf(key), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PUBLISHED_HIGH = CVErr(xlErrValue)
End Function

Public Function WARP_PUBLISHED_RANGE(ByVal key As Variant) As Variant
    On Error GoTo Refused
    WARP_PUBLISHED_RANGE = XLPy.CallUDF(PYTHON_MODULE, "WARP_PUBLISHED_RANGE", _
        Array(CellsOf(key)))
    Exit Function
Refused:
    WARP_PUBLISHED_RANGE = CVErr(xlErrValue)
End Function

Public Function WARP_SUBLOTS_OF_SET(ByVal set_length As Variant, ByVal sublot_length As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_SUBLOTS_OF_SET = XLPy.CallUDF(PYTHON_MODULE, "WARP_SUBLOTS_OF_SET", _
        Array(CellsOf(set_length), CellsOf(sublot_length), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_SUBLOTS_OF_SET = CVErr(xlErrValue)
End Function

Public Function WARP_HYDROSULFITE_BY_DIP(ByVal dips As Variant, ByVal exchange As Variant, _
        ByVal sky_destruction As Variant, ByVal bath_hydrosulfite As Variant, _
        Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_HYDROSULFITE_BY_DIP = XLPy.CallUDF(PYTHON_MODULE, "WARP_HYDROSULFITE_BY_DIP", _
        Array(CellsOf(dips), CellsOf(exchange), CellsOf(sky_destruction), CellsOf(bath_hydrosulfite), _
        CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_HYDROSULFITE_BY_DIP = CVErr(xlErrValue)
End Function

Public Function WARP_PROGRAM_VERSION() As Variant
    On Error GoTo Refused
    WARP_PROGRAM_VERSION = XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_VERSION", _
        Array())
    Exit Function
Refused:
    WARP_PROGRAM_VERSION = CVErr(xlErrValue)
End Function

Public Function WARP_TABLES_FINGERPRINT() As Variant
    On Error GoTo Refused
    WARP_TABLES_FINGERPRINT = XLPy.CallUDF(PYTHON_MODULE, "WARP_TABLES_FINGERPRINT", _
        Array())
    Exit Function
Refused:
    WARP_TABLES_FINGERPRINT = CVErr(xlErrValue)
End Function

Public Function WARP_PROGRAM_INTERPRETER() As Variant
    On Error GoTo Refused
    WARP_PROGRAM_INTERPRETER = XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_INTERPRETER", _
        Array())
    Exit Function
Refused:
    WARP_PROGRAM_INTERPRETER = CVErr(xlErrValue)
End Function

Public Function WARP_PRESET_LIMIT(ByVal preset As Variant, ByVal parameter As Variant, _
        Optional ByVal statistic As Variant, Optional ByVal result_unit As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(statistic) Then statistic = Empty
    If IsMissing(result_unit) Then result_unit = Empty
    WARP_PRESET_LIMIT = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRESET_LIMIT", _
        Array(CellsOf(preset), CellsOf(parameter), CellsOf(statistic), CellsOf(result_unit)))
    Exit Function
Refused:
    WARP_PRESET_LIMIT = CVErr(xlErrValue)
End Function

Public Function WARP_PRESET_LIMIT_TEXT(ByVal preset As Variant, ByVal parameter As Variant, _
        Optional ByVal statistic As Variant) As Variant
    On Error GoTo Refused
    If IsMissing(statistic) Then statistic = Empty
    WARP_PRESET_LIMIT_TEXT = XLPy.CallUDF(PYTHON_MODULE, "WARP_PRESET_LIMIT_TEXT", _
        Array(CellsOf(preset), CellsOf(parameter), CellsOf(statistic)))
    Exit Function
Refused:
    WARP_PRESET_LIMIT_TEXT = CVErr(xlErrValue)
End Function
